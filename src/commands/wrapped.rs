//! Words broken into lines that fit a screen.

/// The narrowest screen that is written for, characters.
const NARROWEST: usize = 40;

/// Breaks words into lines of at most `width` characters, the first after `first`, the others after as many spaces as `first` has
/// characters. A word longer than a line stands alone on one. Ends with a line end.
pub fn wrapped(first: &str, words: &str, width: usize) -> String {
    let indent = first.chars().count();
    let room = width.max(NARROWEST.max(indent + 20)) - indent;
    let mut lines: Vec<String> = vec![String::new()];
    for word in words.split_whitespace() {
        let line = lines.last_mut().expect("there is always a line");
        if line.is_empty() {
            line.push_str(word);
        } else if line.chars().count() + 1 + word.chars().count() <= room {
            line.push(' ');
            line.push_str(word);
        } else {
            lines.push(word.to_string());
        }
    }
    let mut out = String::new();
    for (i, line) in lines.iter().enumerate() {
        let start = if i == 0 {
            first.to_string()
        } else {
            " ".repeat(indent)
        };
        out.push_str(format!("{start}{line}").trim_end());
        out.push('\n');
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn by_hand_breaks_at_the_width() {
        let text = wrapped(
            "  why: ",
            "one two three four five six seven eight nine ten",
            40,
        );
        assert_eq!(
            text,
            "  why: one two three four five six seven\n       eight nine ten\n"
        );
    }

    proptest::proptest! {
        /// No line is longer than the screen, and no word is lost.
        #[test]
        fn holds_every_word_and_the_width(words in "([a-zé]{1,12} ){0,40}", width in 40usize..160) {
            let text = wrapped("    ", &words, width);
            proptest::prop_assert!(text.lines().all(|line| line.chars().count() <= width));
            proptest::prop_assert!(text.split_whitespace().eq(words.split_whitespace()));
        }
    }
}
