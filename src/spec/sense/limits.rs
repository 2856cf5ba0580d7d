//! Shares and ratios, which are fractions of one and are often written as hundredths by mistake.

use crate::spec::{Fault, Flange, Written};

pub(super) fn shares_and_ratios(written: &Written, faults: &mut Vec<Fault>) {
    let own = &written.own_limits;
    let mut shares: Vec<(&str, f64)> = Vec::new();
    if let Some(limit) = &own.tube_ligament {
        shares.push((
            "own_limits.tube_ligament.share_of_hole",
            limit.share_of_hole,
        ));
    }
    if let Some(limit) = &own.ligament_efficiency {
        shares.push(("own_limits.ligament_efficiency.limit", limit.limit));
    }
    if let Some(Flange::Pressed(pressed)) = &written.flange
        && let Some(hot) = &pressed.former_hot_allowance
    {
        shares.push(("flange.pressed.former_hot_allowance.share", hot.share));
    }
    for (path, share) in shares {
        if !(0.0..=1.0).contains(&share) {
            let hundredths = crate::units::print::trimmed(share / 100.0, 6);
            faults.push(Fault::new(
                path,
                format!("{share} is not a share of one"),
                match (1.0..=100.0).contains(&share) {
                    true => format!("did you mean {share} %, which is {hundredths}?"),
                    false => "write it from 0 to 1, or as a percentage".into(),
                },
            ));
        }
    }
    if let Some(factor) = &own.end_load_factor
        && factor.limit <= 0.0
    {
        let fact = format!("a factor of {} asks for nothing", factor.limit);
        let remedy = "write the least factor, or take the limit out";
        faults.push(Fault::new("own_limits.end_load_factor.limit", fact, remedy));
    }
}
