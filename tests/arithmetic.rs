//! Arithmetic on whatever may be typed, and lengths that come back as they went in.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use faceline::model::{self, Files, JobFile};
use faceline::parameters::resolve;
use faceline::units::{Length, Show, System, reading};
use proptest::prelude::*;
use std::io;
use std::path::{Path, PathBuf};
use std::sync::LazyLock;

struct Example;

impl Files for Example {
    fn size(&self, _path: &Path) -> io::Result<u64> {
        Ok(0)
    }

    fn read(&self, _path: &Path, _limit: u64) -> io::Result<Vec<u8>> {
        Ok(include_bytes!("worked_example.ron").to_vec())
    }

    fn canonical(&self, path: &Path) -> io::Result<PathBuf> {
        Ok(path.to_path_buf())
    }
}

static EXAMPLE: LazyLock<JobFile> =
    LazyLock::new(|| model::read(Path::new("worked_example.ron"), &[], &Example).expect("the example reads"));

/// The frame's depth when this is written for it.
fn depth(text: &str) -> Option<Length> {
    let set = [("frame.depth".to_owned(), text.to_owned())];
    resolve(&EXAMPLE, &set).ok().map(|given| given.frame.depth)
}

/// Text that is nearly an expression.
fn nearly() -> impl Strategy<Value = String> {
    let word = prop::sample::select(vec![
        "1",
        "20",
        "3/4",
        "1/0",
        "0.5",
        ".",
        "in",
        "ft",
        "mm",
        "'",
        "\"",
        "-",
        "+",
        "*",
        "/",
        "(",
        ")",
        ",",
        "min(",
        "max(",
        "round(",
        "per",
        ":",
        "%",
        "grill",
        ".",
        "grill.drop",
        "frame.depth",
        "B.width",
        " ",
        "é",
        "″",
        "9e9",
        "to",
    ]);
    prop::collection::vec(word, 0..24).prop_map(|words| words.concat())
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn no_text_makes_it_panic(text in any::<String>()) {
        let _ = reading::quantity(&text);
        let _ = depth(&text);
    }

    #[test]
    fn no_near_expression_makes_it_panic(text in nearly()) {
        let _ = reading::quantity(&text);
        let _ = depth(&text);
    }

    #[test]
    fn no_file_makes_it_panic(cut in 0_usize..3_000, put in nearly()) {
        struct Spoiled(String);
        impl Files for Spoiled {
            fn size(&self, _path: &Path) -> io::Result<u64> {
                Ok(0)
            }
            fn read(&self, _path: &Path, _limit: u64) -> io::Result<Vec<u8>> {
                Ok(self.0.clone().into_bytes())
            }
            fn canonical(&self, path: &Path) -> io::Result<PathBuf> {
                Ok(path.to_path_buf())
            }
        }
        let mut text = include_str!("worked_example.ron").to_owned();
        let mut at = cut.min(text.len());
        while !text.is_char_boundary(at) {
            at -= 1;
        }
        text.insert_str(at, &put);
        if let Ok(job) = model::read(Path::new("job.ron"), &[], &Spoiled(text)) {
            let _ = resolve(&job, &[]);
        }
    }

    #[test]
    fn lengths_come_back(sixteenths in 1_i64..16_000, millimetres in 1_i64..400_000) {
        let inches = Length::from_sixty_fourths(sixteenths * 4);
        prop_assert_eq!(depth(&Show::new(System::Inches).plain(inches)), Some(inches));
        let metric = Length::from_nm(millimetres * 1_000_000);
        prop_assert_eq!(depth(&Show::new(System::Millimetres).plain(metric)), Some(metric));
    }

    #[test]
    fn sums_are_exact(a in 1_i64..64_000, b in 1_i64..64_000, c in 1_i64..200_000) {
        let text = format!("{a}/64 in + {b}/64 in + {c} mm - {c} mm");
        prop_assert_eq!(depth(&text), Some(Length::from_sixty_fourths(a + b)));
    }

    #[test]
    fn feet_and_inches_are_one_length(feet in 0_i64..40, inches in 1_i64..12, eighths in 1_i64..8) {
        let wanted = Length::from_sixty_fourths(((feet * 12 + inches) * 8 + eighths) * 8);
        for text in [
            format!("{feet} ft {inches} {eighths}/8 in"),
            format!("{feet}'-{inches} {eighths}/8\""),
            format!("{feet}' {inches}-{eighths}/8 in"),
        ] {
            prop_assert_eq!(depth(&text), Some(wanted), "{}", text);
        }
    }
}
