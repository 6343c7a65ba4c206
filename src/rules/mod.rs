//! What must hold before anything is cut, one rule a file. Rules read only the solved run.

mod boards;
mod cladding;
mod corners;
mod counter;
mod cutting;
mod floor;
mod gas;
mod heat;
mod hot;
mod lack;
mod landing;
mod limit;
mod materials;
mod orders;
mod sequence;
pub mod stack;
mod supports;
mod trim;
mod vents;
mod water_and_power;
mod weights;

pub use lack::Lack;
pub use limit::Limit;

use crate::findings::{Finding, Origin, Place, Severity, Subject};
use crate::solve::{Fitting, Leg, Solved};

/// One thing that must hold.
pub struct Rule {
    /// What it wants, in words joined by hyphens.
    pub name: &'static str,
    /// How much its gravest finding matters.
    pub severity: Severity,
    /// What it wants, in a sentence.
    pub about: &'static str,
    /// What goes wrong when it doesn't hold.
    pub why: &'static str,
    /// What to do about it.
    pub instead: &'static str,
    /// Where the demand comes from.
    pub origin: Origin,
    /// What it is about.
    pub concerns: Concern,
    /// Limits that a job may set otherwise, with a reason.
    pub limits: &'static [Limit],
    /// Every input that it lacks in a run, so that it can't pass.
    pub needs: fn(&Solved) -> Vec<Lack>,
    /// Everything in a run for which it doesn't hold.
    pub check: fn(&Solved) -> Vec<Finding>,
}

/// What a rule is about: findings are told in these groups.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Concern {
    /// Fuel gas.
    Gas,
    /// Openings that let gas out and air in.
    Vents,
    /// Heat, and what burns.
    Heat,
    /// Landing, reach, heights, fronts that open.
    Landing,
    /// The counter and what carries it.
    Counter,
    /// Board and finish.
    Cladding,
    /// Water and electricity.
    WaterAndPower,
    /// The floor and the feet on it.
    Floor,
    /// What is cut, and whether it fits.
    Cutting,
    /// What is bought, what it weighs.
    Materials,
    /// What is ordered, and what is done before what.
    Orders,
}

impl Concern {
    /// Every group, in the order in which they are told.
    pub const ALL: [Concern; 11] = [
        Concern::Gas,
        Concern::Vents,
        Concern::Heat,
        Concern::Landing,
        Concern::Counter,
        Concern::Cladding,
        Concern::WaterAndPower,
        Concern::Floor,
        Concern::Cutting,
        Concern::Materials,
        Concern::Orders,
    ];

    /// As a heading.
    pub const fn words(self) -> &'static str {
        match self {
            Concern::Gas => "Gas",
            Concern::Vents => "Vents",
            Concern::Heat => "Heat and clearance",
            Concern::Landing => "Landing, reach, height",
            Concern::Counter => "Counter",
            Concern::Cladding => "Cladding",
            Concern::WaterAndPower => "Water and power",
            Concern::Floor => "Floor",
            Concern::Cutting => "Cutting",
            Concern::Materials => "Materials and weights",
            Concern::Orders => "Orders and sequence",
        }
    }
}

/// Every rule, in the order in which findings of one severity are listed.
pub const ALL: &[&Rule] = &[
    &cutting::run_fits_its_site::RULE,
    &corners::run_clears_what_was_surveyed::RULE,
    &corners::fronts_clear_the_corner::RULE,
    &cutting::fitting_inside_its_module::RULE,
    &cutting::cutouts_keep_a_strip_between_them::RULE,
    &cutting::cutout_stays_in_its_board::RULE,
    &cutting::cutout_clears_frame_members::RULE,
    &cutting::body_fits_its_module::RULE,
    &cutting::body_passes_its_cutout::RULE,
    &cutting::flange_covers_its_gap::RULE,
    &cutting::flange_finds_its_backing::RULE,
    &gas::gas_pipe_is_one_tree::RULE,
    &gas::gas_pipe_carries_its_load::RULE,
    &gas::gas_pressure_reaches_its_appliance::RULE,
    &gas::gas_shutoff_within_reach::RULE,
    &gas::gas_connector_short_enough::RULE,
    &gas::gas_inlet_reduced_past_its_shutoff::RULE,
    &vents::gas_space_is_vented::RULE,
    &vents::vent_lets_enough_through::RULE,
    &vents::vent_is_left_open::RULE,
    &vents::cylinder_bay_is_vented::RULE,
    &vents::cylinder_bay_apart_from_heat::RULE,
    &heat::combustibles_keep_their_distance::RULE,
    &heat::nothing_that_burns_overhead::RULE,
    &heat::burnable_parts_have_a_liner::RULE,
    &heat::stubs_outside_the_hot_zone::RULE,
    &heat::body_has_its_air_gap::RULE,
    &heat::lid_has_room_to_open::RULE,
    &landing::landing_beside_heat::RULE,
    &landing::landing_behind_an_island_grill::RULE,
    &landing::landing_beside_water::RULE,
    &landing::landing_by_the_refrigerator::RULE,
    &landing::aisle_wide_enough::RULE,
    &landing::counter_height_suits_its_people::RULE,
    &landing::fronts_open_freely::RULE,
    &landing::pier_between_openings::RULE,
    &counter::counter_span_within_limit::RULE,
    &counter::counter_overhang_supported::RULE,
    &counter::counter_strip_strong_enough::RULE,
    &counter::inside_corner_has_a_radius::RULE,
    &counter::seam_clear_of_cutouts::RULE,
    &supports::heavy_fitting_finds_its_arms::RULE,
    &supports::bracket_fills_its_recess::RULE,
    &supports::support_is_strong_enough::RULE,
    &supports::support_is_stiff_enough::RULE,
    &counter::piece_fits_its_slab::RULE,
    &counter::piece_can_be_lifted::RULE,
    &counter::counter_joint_at_walls::RULE,
    &counter::frame_stiff_enough_for_its_top::RULE,
    &counter::resin_top_out_of_sun_and_heat::RULE,
    &counter::top_thin_enough_to_hang_in::RULE,
    &boards::piece_fits_a_sheet::RULE,
    &boards::length_fits_a_bar::RULE,
    &boards::joint_lies_on_framing::RULE,
    &boards::joint_clear_of_cutout_corners::RULE,
    &boards::no_narrow_strip::RULE,
    &cladding::board_carries_its_cladding::RULE,
    &cladding::framing_close_enough_for_its_board::RULE,
    &cladding::cladding_has_its_joints::RULE,
    &cladding::cladding_clears_the_floor::RULE,
    &cladding::face_thin_enough_for_its_fitting::RULE,
    &water_and_power::sink_has_water_and_drain::RULE,
    &water_and_power::power_where_it_is_wanted::RULE,
    &water_and_power::power_apart_from_gas::RULE,
    &water_and_power::stub_comes_up_beside_the_tubes::RULE,
    &floor::feet_within_range::RULE,
    &floor::feet_keep_some_travel::RULE,
    &floor::foot_carries_its_load::RULE,
    &floor::foot_carries_a_rocking_module::RULE,
    &floor::foot_stands_under_a_tube::RULE,
    &floor::floor_sheds_water::RULE,
    &floor::drain_stays_open::RULE,
    &trim::trim_hides_the_feet::RULE,
    &trim::trim_keeps_a_strip::RULE,
    &trim::trim_joint_is_backed::RULE,
    &trim::trim_screws_into_tube::RULE,
    &cutting::published_agrees_with_measured::RULE,
    &cutting::limit_belongs_to_a_rule::RULE,
    &corners::seats_have_knee_space::RULE,
    &corners::corner_is_cut_to_its_angle::RULE,
    &sequence::closed_in_service_is_reached::RULE,
    &orders::order_says_left_or_right::RULE,
    &cutting::cutout_was_measured::RULE,
    &orders::order_rests_on_measured_lengths::RULE,
    &weights::floor_carries_the_run::RULE,
    &weights::part_has_its_lifters::RULE,
    &materials::one_name_one_material::RULE,
    &materials::bed_of_a_finish_is_given::RULE,
];

/// The rule of this name.
pub fn named_rule(name: &str) -> Option<&'static Rule> {
    ALL.iter().copied().find(|rule| rule.name == name)
}

/// What the finding of a rule is about; findings that no rule here makes are about what is cut.
pub fn concern(finding: &Finding) -> Concern {
    named_rule(finding.rule).map_or(Concern::Cutting, |rule| rule.concerns)
}

/// What all rules find, the gravest first, then in the order of [`ALL`], then as they lie in the run. Inputs that rules lack
/// come behind what they found of the same severity.
pub fn check(solved: &Solved) -> Vec<Finding> {
    let mut findings: Vec<Finding> = ALL.iter().flat_map(|rule| (rule.check)(solved)).collect();
    let lacks = ALL.iter().flat_map(|rule| (rule.needs)(solved).into_iter().map(move |lack| (*rule, lack)));
    findings.extend(lack::findings(lacks.collect()));
    findings.sort_by_key(|finding| std::cmp::Reverse(finding.severity));
    findings
}

impl Rule {
    /// A finding of this rule.
    fn finding(
        &self,
        severity: Severity,
        subject: Subject,
        place: Option<&Place>,
        message: String,
        instead: impl Into<String>,
    ) -> Finding {
        Finding {
            rule: self.name,
            severity,
            subject,
            message,
            instead: instead.into(),
            place: place.cloned(),
            origin: self.origin,
        }
    }
}

/// For rules that need nothing which every solved run hasn't.
fn nothing(_: &Solved) -> Vec<Lack> {
    Vec::new()
}

/// Every fitting of the run with its leg.
fn fittings(solved: &Solved) -> impl Iterator<Item = (&Leg, &Fitting)> {
    solved.legs.iter().flat_map(|leg| leg.fittings.iter().map(move |fitting| (leg, fitting)))
}

/// A fitting as messages name it: its mark and its id, as `B1 (grill)`.
fn named(fitting: &Fitting) -> String {
    format!("{} ({})", fitting.mark, fitting.id)
}
