//! The trade: quantities, lawn, kit, product, plan, checks and the visit. Pure.
