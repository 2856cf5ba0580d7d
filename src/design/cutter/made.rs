//! What the cutter makes of each hole, by purpose.
//!
//! The figures are the works' settings, in `cutting` of the spec. What stands here are the rules above them: a hole smaller than
//! the process makes clean becomes a pop, a pilot larger than the cutter's guide pin becomes a pop, and so does a purpose with
//! no policy.

use super::settings::{Policy, Settings};
use crate::design::HoleGroup;
use crate::spec::{HoleCut, Purpose};
use crate::units::Length;
use crate::units::print::millimetres;

/// What is done to a hole by the cutter.
#[derive(Clone, Debug, PartialEq)]
pub enum Made {
    /// Cut to this diameter, and by what figures.
    Cut(Length, String),
    /// A centre pop, with the reason why no more.
    Pop(String),
    /// Nothing at all, with the reason.
    Nothing(String),
}

/// What is made of one hole of a group, of this finished diameter: by the policy, but of a mouth no more than a pop.
pub fn made_of(settings: &Settings<'_>, group: &HoleGroup, finish: Length) -> Made {
    let made = made(settings, group.purpose, finish);
    match (&group.mouth, made) {
        (Some(_), Made::Cut(..)) => Made::Pop(MOUTH.into()),
        (_, made) => made,
    }
}

/// Why no hole is cut where a mouth is turned out.
const MOUTH: &str = "its mouth is turned out of the plate's own metal: the works opens it and flanges it, and a hole cut to size \
would leave no metal for the mouth";

/// Why a hole is not cut for which the spec has no policy, in words for the cutter.
const NO_POLICY: &str = "the order gives no size to cut it to: the works drills it";

/// What the policy makes of one hole of this finished diameter. Only for a policy that leaves something of the hole.
pub fn made(settings: &Settings<'_>, purpose: Purpose, finish: Length) -> Made {
    let Some(policy) = settings.policy(purpose) else {
        return Made::Pop(NO_POLICY.into());
    };
    let remark = match policy.remark {
        "" => String::new(),
        remark => format!(" ({remark})"),
    };
    match policy.cut {
        HoleCut::Undersize => match &policy.under {
            Some(under) => cut_or_pop(settings, &policy, finish - under.value, &under.words),
            None => Made::Pop(format!(
                "the works has not said how much is left in {} holes",
                purpose.name()
            )),
        },
        HoleCut::Finish => cut_or_pop(settings, &policy, finish, "to the finished size"),
        HoleCut::Pop => Made::Pop(format!(
            "the works drills {} holes from a pop{remark}",
            purpose.name()
        )),
        HoleCut::Nothing => Made::Nothing(format!(
            "the works leaves {} holes to be marked out",
            purpose.name()
        )),
    }
}

fn cut_or_pop(settings: &Settings<'_>, policy: &Policy, diameter: Length, words: &str) -> Made {
    let process = settings.process();
    if let Some(least) = settings.least_hole()
        && diameter.shortfall(least.value).is_some()
    {
        return Made::Pop(format!(
            "{} mm is below the least hole that {} makes clean, {}",
            millimetres(diameter),
            process.name(),
            least.words
        ));
    }
    match &policy.guide_pin {
        Some(pin) if pin.value().shortfall(diameter).is_some() => {
            let heat = match process.is_thermal() {
                true => ", and its edge is hard",
                false => "",
            };
            Made::Pop(format!(
                "a pilot of {} mm is larger than the cutter's guide pin, {pin}: worse than none, since it guides nothing{heat}",
                millimetres(diameter)
            ))
        }
        _ => Made::Cut(diameter, words.into()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::spec::Cutting;

    fn made_of(cutting: &str, finish: f64, thickness: f64, purpose: Purpose) -> Made {
        let cutting: Cutting = serde_json::from_str(cutting).expect("settings");
        let settings = Settings::of(&cutting, Some(Length::mm(thickness)));
        made(&settings, purpose, Length::mm(finish))
    }

    fn cut_to(made: Made) -> String {
        match made {
            Made::Cut(diameter, _) => format!("{:.1}", diameter.to_mm()),
            Made::Pop(why) | Made::Nothing(why) => why,
        }
    }

    const PLASMA: &str = r#"{"process": "plasma", "origin": "works", "least_hole_thicknesses": 1.5,
        "hole_allowance": {"edge": "1.5 mm", "taper": "0.5 mm", "position": "0.5 mm", "origin": "works"},
        "holes": [{"purpose": "tube", "cut": "undersize"}, {"purpose": "bolt", "cut": "undersize"}]}"#;

    /// 44.7 - 2 × (1.5 + 0.5 + 0.5) = 39.7 mm. 20.5 - 5 = 15.5 mm, and 1.5 × 12 = 18 mm.
    #[test]
    fn by_hand_edge_taper_and_position_add_up_on_each_side() {
        assert_eq!(cut_to(made_of(PLASMA, 44.7, 12.0, Purpose::Tube)), "39.7");
        assert_eq!(
            cut_to(made_of(PLASMA, 20.5, 12.0, Purpose::Bolt)),
            "15.5 mm is below the least hole that plasma makes clean, 18 mm, 1.5 thicknesses of 12 mm"
        );
    }

    /// 39.7 mm is clean while 1.5 t is no more: up to 26.4 mm.
    #[test]
    fn by_hand_the_same_hole_is_clean_up_to_26_4_mm() {
        assert_eq!(cut_to(made_of(PLASMA, 44.7, 26.4, Purpose::Tube)), "39.7");
        assert!(matches!(
            made_of(PLASMA, 44.7, 26.6, Purpose::Tube),
            Made::Pop(_)
        ));
    }

    /// 44.7 - 2 × (0 + 0.25 + 0.25) = 43.7 mm.
    #[test]
    fn by_hand_a_cold_cut_leaves_less() {
        let cold = PLASMA
            .replace("plasma", "waterjet")
            .replace("1.5 mm", "0 mm")
            .replace("0.5 mm", "0.25 mm");
        assert_eq!(cut_to(made_of(&cold, 44.7, 12.0, Purpose::Tube)), "43.7");
    }

    /// 44.7 - 6 = 38.7 mm by the starting figures for plasma; bolts are popped, and a pipe has no figure.
    #[test]
    fn holds_starting_figures_are_taken_only_where_named_and_say_so() {
        let none = r#"{"process": "plasma", "origin": "works"}"#;
        assert!(matches!(
            made_of(none, 44.7, 12.0, Purpose::Tube),
            Made::Pop(_)
        ));
        let named = r#"{"process": "plasma", "origin": "works", "starting_figures": "plasma"}"#;
        let Made::Cut(diameter, by) = made_of(named, 44.7, 12.0, Purpose::Tube) else {
            panic!("it is cut");
        };
        assert_eq!(format!("{:.1}", diameter.to_mm()), "38.7");
        assert!(by.ends_with("(starting figure, works to confirm)"), "{by}");
        for (purpose, words) in [
            (
                Purpose::Bolt,
                "from a pop (starting figure, works to confirm)",
            ),
            (
                Purpose::SteamPipe,
                "the order gives no size to cut it to: the works drills it",
            ),
        ] {
            let why = cut_to(made_of(named, 110.0, 12.0, purpose));
            assert!(why.ends_with(words), "{why}");
        }
    }

    /// 44.7 - 5 = 39.7 mm on a pin of 10 mm; a pilot of the pin's own size guides it.
    #[test]
    fn holds_a_pilot_larger_than_the_guide_pin_becomes_a_pop() {
        let with_pin = |pin: &str| {
            let words = format!(r#""cut": "undersize", "guide_pin": "{pin}"}}, "#);
            let cutting = PLASMA.replacen(r#""cut": "undersize"}, "#, &words, 1);
            cut_to(made_of(&cutting, 44.7, 12.0, Purpose::Tube))
        };
        assert!(
            with_pin("10 mm")
                .starts_with("a pilot of 39.7 mm is larger than the cutter's guide pin, 10 mm")
        );
        assert_eq!(with_pin("39.7 mm"), "39.7");
    }
}
