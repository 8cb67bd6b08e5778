//! Floor `plan`: from a ring and a workshop to the order of cuts, the settings of the dividing head, the thread's
//! passes, speeds, and the bar.
//!
//! Lengths mm, angles degrees; a list says from which side it is seen. May use `evaluate` and every floor under it;
//! must not judge a ring, draw, touch a file or look at the screen. No clock, no chance: same ring and workshop, same
//! plan.

mod as_it_stands;
mod cut_zones;
mod degrees;
mod dividing;
mod dividing_head;
mod gear_train;
mod infeed;
mod operation;
mod order;
mod precedence;
mod route;
mod run_out;
mod sheet;
mod shortfall;
mod speeds;
mod step;
mod step_sizes;
mod stock;
mod thread_words;
mod threading;
mod whole;
mod words;

pub use crate::document::Route;
pub use as_it_stands::{Stage, stages};
pub use degrees::DegreesMinutesSeconds;
pub use dividing::{DividingList, Mark, Row, SEEN_FROM, dividing_list};
pub use dividing_head::{Setting as CrankSetting, settings, settings_on_few_plates};
pub use gear_train::{GearTrain, HalfNut, best_train};
pub use infeed::{
    InfeedMethod, LEAST_CUT_MM, deeper_by_tip_mm, on_compound_mm, passes_for_first_cut,
    suggested_passes,
};
pub use operation::Operation;
pub use order::{Alternative, PlanError, ShopPlan, shop_plan, shop_plan_on};
pub use precedence::{Cycle, Rule, arrange, exchangeable, rules};
pub use route::Setting;
pub use run_out::{Comfort, RunOut, StopTime, greatest_rpm, seconds_to_stop};
pub use sheet::plan_sheet;
pub use shortfall::{Shortfall, shortfalls};
pub use speeds::{
    CuttingRow, SpindleSpeed, Work, cutting_row, feed_a_tooth_mm, rpm_of, speed_m_min,
    spindle_speed, table_feed_mm_min,
};
pub use step::{CutSpeed, Feed, Step};
pub use step_sizes::{ROUGHING_ALLOWANCE_MM, SKIM_ALLOWANCE_MM, TargetSize};
pub use stock::{Stock, bar_mass_kg, stock};
pub use thread_words::{
    THREAD_DEPTHS_ARE, depth_words, gauge_words, gear_words, run_out_words, ways_out,
};
pub use threading::{Pass, Threading, threading};
pub use words::{
    CAUTIONS, COUNTED_FROM_ZERO, Reason, SEEN_FROM_WORDS, SPEEDS_ARE, exchange_words,
    freedom_words, reason_words, stock_words,
};
