use evensward_core::kit::per_pass;
use evensward_core::quantity::{FlowRate, Length, Pace, VolumePerArea};

fn rate(flow: FlowRate, pace: Pace, fan_height: Length) -> VolumePerArea {
    per_pass(flow, pace, fan_height)
}

fn main() {
    let _ = rate;
}
