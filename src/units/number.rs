//! A written number kept as a ratio of whole numbers, so that 1.75 in is exactly 44.45 mm after one division.

/// A number at or above nothing, exactly as written: `top` over `bottom`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Ratio {
    pub(super) top: u64,
    /// Never nothing.
    pub(super) bottom: u64,
}

/// More digits than this before or after the point are not a size that anybody measured, and would not stay exact.
pub(super) const MOST_DIGITS: usize = 6;

impl Ratio {
    /// Reads plain decimal digits: `56`, `1.8125`, `.5`. Nothing where the text is anything else or has too many digits.
    pub(super) fn decimal(text: &str) -> Option<Ratio> {
        let (whole, part) = text.split_once('.').unwrap_or((text, ""));
        let plain = |digits: &str| {
            digits.len() <= MOST_DIGITS && digits.bytes().all(|byte| byte.is_ascii_digit())
        };
        if !plain(whole)
            || !plain(part)
            || (part.is_empty() && (whole.is_empty() || text.ends_with('.')))
        {
            return None;
        }
        let digits = whole.bytes().chain(part.bytes());
        Some(Ratio {
            top: digits.fold(0, |number, digit| number * 10 + u64::from(digit - b'0')),
            bottom: 10_u64.pow(part.len() as u32),
        })
    }

    /// Whole numbers and a fraction together: 1 and 13/16.
    pub(super) fn mixed(whole: u64, top: u64, bottom: u64) -> Ratio {
        Ratio {
            top: whole * bottom + top,
            bottom,
        }
    }

    /// The two together.
    pub(super) fn plus(self, other: Ratio) -> Ratio {
        Ratio {
            top: self.top * other.bottom + other.top * self.bottom,
            bottom: self.bottom * other.bottom,
        }
    }

    /// So many times as much.
    pub(super) fn times(self, count: u64) -> Ratio {
        Ratio {
            top: self.top * count,
            bottom: self.bottom,
        }
    }

    /// The one division.
    pub(super) fn to_f64(self) -> f64 {
        self.top as f64 / self.bottom as f64
    }

    /// Whether it is a whole number.
    pub(super) fn is_whole(self) -> bool {
        self.top.is_multiple_of(self.bottom)
    }
}
