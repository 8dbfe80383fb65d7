use evensward_core::checks::wind::force_from_speed;
use evensward_core::quantity::Pace;

fn force(pace: Pace) -> u8 {
    force_from_speed(pace)
}

fn main() {
    let _ = force;
}
