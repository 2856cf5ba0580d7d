//! Lengths, angles, stress: the accepted spellings, the printed forms and the tolerances. Knows no boiler word.

pub mod angle;
mod density;
pub mod length;
mod number;
pub mod print;
mod read_length;
mod read_stress;
mod slip;
mod spelling;
mod stress;
mod thread;
pub mod tolerance;
mod written;

pub use density::{Density, KG_PER_LB};
pub use length::{Length, MM_PER_INCH};
pub use stress::{LBF_PER_TONF, NEWTONS_PER_LBF, SQUARE_MM_PER_SQUARE_INCH, Stress};
pub use thread::whitworth_core;
pub use written::{Heaviness, Quantity, Size, Strength, Unread, Written};
