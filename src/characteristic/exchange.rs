//! Exchange of parts whose life ends within the years of service.

use crate::ledger::{About, Characteristic};
use crate::units::*;

characteristics! {
    after super::safety::END;

    DOWNTIME_PRICE: Money, "downtime-price", "k_dt", "", "an hour in which the machine stands for an exchange";
    SCREW_EXCHANGE_WORK: Time, "screw-exchange-work", "h_x1", "h", "work of exchanging one screw with its nut";
    SCREW_EXCHANGE_STANDSTILL: Time, "screw-exchange-standstill", "h_s1", "h", "working hours that the machine stands for one screw";
    SCREW_EXCHANGES: Ratio, "screw-exchanges", "b_x1", "1", "exchanges of the screw within the years of service, at their present value";
    SCREW_EXCHANGE_PRICE: Money, "screw-exchange-price", "K_x1", "", "exchanging the screws with their nuts of all drives once";
    SCREW_REPLACEMENT: Money, "screw-replacement", "K_R1", "", "exchanges of screws with nuts over the years of service, at their present value";
    BEARINGS_PRICE: Money, "bearings-price", "k_3n", "", "bearing sets of one screw, or the nut unit of a driven nut";
    BEARING_EXCHANGE_WORK: Time, "bearing-exchange-work", "h_x2", "h", "work of exchanging the bearings of one screw or nut";
    BEARING_EXCHANGE_STANDSTILL: Time, "bearing-exchange-standstill", "h_s2", "h", "working hours that the machine stands for bearings";
    BEARING_EXCHANGES: Ratio, "bearing-exchanges", "b_x2", "1", "exchanges of the bearings within the years of service, at their present value";
    BEARING_EXCHANGE_PRICE: Money, "bearing-exchange-price", "K_x2", "", "exchanging the bearings of all drives once";
    BEARING_REPLACEMENT: Money, "bearing-replacement", "K_R2", "", "exchanges of bearings over the years of service, at their present value";
    BELT_LIFE: Time, "belt-life", "L_B", "h", "life of a belt";
    REDUCTION_EXCHANGE_WORK: Time, "reduction-exchange-work", "h_x3", "h", "work of exchanging one belt or gearbox";
    REDUCTION_EXCHANGE_STANDSTILL: Time, "reduction-exchange-standstill", "h_s3", "h", "working hours that the machine stands for one belt or gearbox";
    REDUCTION_EXCHANGES: Ratio, "reduction-exchanges", "b_x3", "1", "exchanges of the belt or gearbox within the years of service, at their present value";
    REDUCTION_EXCHANGE_PRICE: Money, "reduction-exchange-price", "K_x3", "", "exchanging the belts or gearboxes of all drives once";
    REDUCTION_REPLACEMENT: Money, "reduction-replacement", "K_R3", "", "exchanges of belts or gearboxes over the years of service, at their present value";
    REPLACEMENT_COST: Money, "replacement-cost", "K_R", "", "exchanges of all parts whose life ends within the years of service, at their present value";
}
