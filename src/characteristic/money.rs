//! Money, mass and time, all drives of the axis.

use crate::ledger::{About, Characteristic};
use crate::units::*;

characteristics! {
    after super::accuracy::END;

    DRIVE_MASS: Mass, "drive-mass", "m_dr", "kg", "complete mass of all drives of the axis";
    LEAD_TIME: Time, "lead-time", "t_L", "weeks", "longest delivery time of any part";
    ELEMENT_PRICE: Money, "element-price", "k_e", "", "one screw with nut and nut unit if any, or one rack line with pinion";
    SUPPORT_SIZE_PRICE: Money, "support-pair-size-price", "k_15", "", "supports that travel with the nut of a screw of 32 mm";
    SUPPORT_PAIR_PRICE: Money, "support-pair-price", "k_16", "", "supports that travel with the nut of one screw";
    HELD_ENDS_PRICE: Money, "held-ends-price", "k_17", "", "bearings or clamps of one screw with the machining of its ends";
    SIZE_PRICE_FACTOR: Ratio, "size-price-factor", "K_d", "1", "price of this kind of screw over that of a plain one of its size";
    SUPPORT_PRICE: Money, "support-price", "k_b", "", "bearings or clamps and supports of one screw, or fasteners and joints of one rack line";
    REDUCTION_PRICE: Money, "reduction-price", "k_red", "", "one coupling, belt or gearbox";
    MOTOR_PRICE: Money, "motor-price", "k_M", "", "one motor with its drive electronics";
    GRADE_PRICE_FACTOR: Ratio, "grade-price-factor", "K_gr", "1", "price of the grade over that of the base grade";
    NUT_PRICE_FACTOR: Ratio, "nut-price-factor", "K_nut", "1", "price of the nut with this preload over that of a single nut";
    SCREW_BASE_PRICE: Money, "screw-base-price", "k_0", "", "base price of a 32 mm screw with nut";
    SCREW_METRE_PRICE: Money, "screw-metre-price", "k_1", "", "price a metre of a 32 mm screw";
    ENDS_PRICE: Money, "ends-price", "k_2", "", "machining of the screw ends, 32 mm screw";
    BEARING_PRICE: Money, "bearing-price", "k_3", "", "one set of screw bearings";
    SCREW_PRICE: Money, "screw-price", "k_12", "", "one screw with its nut, without nut unit";
    NUT_UNIT_PRICE: Money, "nut-unit-price", "k_13", "", "one nut unit";
    CLAMP_PRICE: Money, "clamp-price", "k_14", "", "one clamp for the end of a standing screw, 32 mm screw";
    SUPPORT_PRICE_SHARE: Ratio, "support-price-share", "x_u", "1", "price of a radial support over that of a bearing set";
    RACK_METRE_PRICE: Money, "rack-metre-price", "k_4", "", "price a metre of rack in the base quality";
    RACK_PRICE_FACTOR: Ratio, "rack-price-factor", "K_q", "1", "price of the quality over that of the base quality";
    PINION_BASE_PRICE: Money, "pinion-base-price", "k_5", "", "fixed part of the pinion price";
    PINION_SIZE_PRICE: Money, "pinion-size-price", "k_6", "", "size part of the pinion price, module 1 mm and 20 teeth";
    PINION_PRICE: Money, "pinion-price", "k_p", "", "one pinion";
    RACK_LINE_PRICE: Money, "rack-line-price", "k_rl", "", "one rack line";
    JOINT_PRICE: Money, "joint-price", "k_7", "", "one joint with its pins";
    FASTENER_PRICE: Money, "fastener-price", "k_8", "", "one fastener";
    GAUGE_PRICE: Money, "gauge-price", "k_9", "", "mating gauge piece for the joints";
    FITTING_HOURS: Time, "fitting-hours", "h_0", "h", "fitting and alignment, fixed part";
    FITTING_HOURS_PER_METRE: Time, "fitting-hours-per-metre", "h_1", "h", "fitting and alignment for each metre of travel";
    LABOUR_RATE: Money, "labour-rate", "k_L", "", "price of an hour of fitting";
    DATUM_PRICE: Money, "datum-price", "k_D", "", "machining of the datum for each metre of travel";
    UPKEEP_HOURS: Time, "upkeep-hours", "h_2", "h", "upkeep a year, fixed part";
    UPKEEP_HOURS_PER_METRE: Time, "upkeep-hours-per-metre", "h_3", "h", "upkeep a year for each metre of travel";
    LUBRICANT_PRICE: Money, "lubricant-price", "k_S", "", "lubricant of one drive a year";
    SCALE_FIXED_PRICE: Money, "scale-fixed-price", "k_10", "", "fixed part of the scale price; zero without a scale";
    SCALE_METRE_PRICE: Money, "scale-metre-price", "k_11", "", "scale price for each metre of travel; zero without a scale";
    FEEDBACK_PRICE: Money, "feedback-price", "k_F", "", "one linear scale, fitted length";
    TABLE_FIXED_PRICE: Money, "table-fixed-price", "k_18", "", "fixed part of the price of a table of corrections; zero without one";
    TABLE_METRE_PRICE: Money, "table-metre-price", "k_19", "", "price of a table of corrections for each metre of travel; zero without one";
    TABLE_PRICE: Money, "table-price", "k_map", "", "measuring one drive and entering its table of corrections";
    FITTING_PRICE: Money, "fitting-price", "k_h", "", "datum, fitting and alignment of one drive";
    ANNUITY: Ratio, "annuity", "b_a", "1", "present value of one unit a year over the years of service";
    HOURS_PER_YEAR: Time, "hours-per-year", "t_a", "h", "working hours a year";
    ENERGY_PRICE: Money, "energy-price", "k_E", "", "price of a kilowatt hour";
    DISCOUNT_RATE: Ratio, "discount-rate", "r", "%", "discount rate a year";
    UPKEEP_PRICE: Money, "upkeep-price", "k_U", "", "lubrication and inspection of one drive a year";
    ELEMENT_COST: Money, "element-cost", "K_e", "", "screws with nuts, or racks with pinions";
    SUPPORT_COST: Money, "support-cost", "K_b", "", "screw bearings, or rack fasteners and pins";
    REDUCTION_COST: Money, "reduction-cost", "K_g", "", "couplings, belts or gearboxes";
    MOTOR_COST: Money, "motor-cost", "K_M", "", "motors with their drive electronics";
    FEEDBACK_COST: Money, "feedback-cost", "K_f", "", "linear scales";
    TABLE_COST: Money, "table-cost", "K_map", "", "tables of corrections: measuring and entering";
    FITTING_COST: Money, "fitting-cost", "K_h", "", "machining of datums, fitting and alignment";
    PURCHASE_COST: Money, "purchase-cost", "K_0", "", "price to buy and fit";
    ENERGY_COST: Money, "energy-cost", "K_E", "", "energy a year";
    UPKEEP_COST: Money, "upkeep-cost", "K_U", "", "lubrication and inspection a year";
    WHOLE_LIFE_COST: Money, "whole-life-cost", "K_L", "", "price, energy and upkeep over the years of service, discounted";
}
