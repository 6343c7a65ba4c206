//! The counter and what carries it.

mod brackets;
pub(super) mod counter_joint_at_walls;
pub(super) mod counter_overhang_supported;
pub(super) mod counter_span_within_limit;
pub(super) mod counter_strip_strong_enough;
pub(super) mod frame_stiff_enough_for_its_top;
pub(super) mod inside_corner_has_a_radius;
pub(super) mod piece_can_be_lifted;
pub(super) mod piece_fits_its_slab;
pub(super) mod resin_top_out_of_sun_and_heat;
pub(super) mod seam_clear_of_cutouts;
pub(super) mod top_thin_enough_to_hang_in;

use crate::solve::Leg;
use crate::units::Length;

/// Nominal 2 cm stone measures up to this: 13/16 in (a trade journal).
const TWO_CENTIMETRES: Length = Length::from_sixty_fourths(52);

/// Whether a tube of a module at the frame's top lies under the whole of a stretch: along u between these, somewhere within
/// this depth.
fn carried(leg: &Leg, module: usize, u: (Length, Length), v: (Length, Length)) -> bool {
    let under = |body: &crate::solve::BodyBox| {
        body.z.1 == leg.datums.frame_top && body.v.0 < v.1 && v.0 < body.v.1 && body.u.0 <= u.0 && u.1 <= body.u.1
    };
    leg.members_of(module..=module).iter().any(|member| under(&member.body))
}
