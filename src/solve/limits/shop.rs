//! What a job may ask of stock, cuts, trim, hands and time.

use super::{Check, Sign};
use crate::parameters::given::{Given, Height};
use crate::units::Length;

/// No blade takes more than this, and no joint between boards is left wider: common practice.
const WIDEST: Length = Length::from_nm(25_400_000);

/// Nothing hardens for longer than this, hours: ten years, to catch a slip of the pen.
const FOREVER: f64 = 87_600.0;

impl Check {
    /// Stock, kerfs, gaps, trim, waits, those who lift.
    pub(super) fn shop(&mut self, given: &Given) {
        let stock = &given.stock;
        for (name, kerf, at) in [
            ("the kerf of the boards", stock.board.kerf, stock.board.place.as_ref()),
            ("the kerf of the substrate", stock.substrate.kerf, stock.substrate.place.as_ref()),
            ("the kerf of the bars", stock.bars.kerf, None),
            ("the gap between boards", given.laying.gap, None),
        ] {
            if kerf > WIDEST {
                let (found, most) = (self.show.plain(kerf), self.show.plain(WIDEST));
                self.say(format!("{name} is {found}"), format!("write at most {most}, or check its unit"), at);
            }
        }
        for offcut in stock.board.offcuts.iter().chain(&stock.substrate.offcuts) {
            if offcut.name.trim().is_empty() {
                self.say(
                    "an offcut has no name",
                    "write on it what it is called, and that here",
                    offcut.place.as_ref(),
                );
            }
        }
        if let Some(shortest) = stock.bars.lengths.iter().min()
            && stock.bars.end_trim >= *shortest
        {
            let (trim, bar) = (self.show.plain(stock.bars.end_trim), self.show.plain(*shortest));
            let message = format!("cutting {trim} off the end leaves nothing of a bar {bar} long");
            self.say(message, "shorten `end_trim`, or name longer bars", None);
        }
        if let Some(trim) = &given.trim {
            let (Height::CounterTop(top) | Height::FrameTop(top)) = given.height;
            if top > Length::ZERO && trim.top >= top {
                let message = format!("the base trim is {} high, as high as the run", self.show.plain(trim.top));
                self.say(message, "lower its `top`", trim.place.as_ref());
            }
        }
        if given.counter.needs.lifters == Some(0) {
            self.say("nobody lifts the counter", "write how many lift, as `lifters: 4`", given.counter.place.as_ref());
        }
        self.length("the keep of offcuts", stock.keep, Sign::NotNegative, None);
        for (what, wait) in &given.waits {
            if !wait.hours.is_finite() || wait.hours > FOREVER {
                let message = format!("the wait for {} is longer than ten years", what.word());
                self.say(message, "check the figure and its unit", None);
            }
        }
    }
}
