//! Prices of parts from their sizes. All coefficients come from the catalogue and are invented there.

use super::extremes::larger;
use super::{Formula, Note};
use crate::source::Source;
use crate::units::*;

const SHAPE: &[Source] =
    &[Source::practice("how prices grow with size; every coefficient is invented in the catalogue")];

/// Screw bearings and ends: k_3·(n_t + x_u·n_u) + k_2·(d_0/32 mm)^0.8.
/// Check: 200·(1 + 0.4·1) + 220 at 32 mm → 500.
pub static SUPPORT_PRICE: Formula<fn(Money, Ratio, Ratio, Ratio, Money, Length) -> Money> = Formula {
    note: Note {
        id: "support-price",
        title: "price of screw bearings, supports and end machining",
        equation: "k_b = k_3·(n_t + x_u·n_u) + k_2·(d_0/32 mm)^0.8",
        inputs: &[
            ("k_3", "bearing-price"),
            ("n_t", "thrust-ends"),
            ("n_u", "support-ends"),
            ("x_u", "support-price-share"),
            ("k_2", "ends-price"),
            ("d_0", "nominal-diameter"),
        ],
        validity: "generic prices",
        sources: SHAPE,
    },
    apply: |bearing, thrust_ends, supports, share, ends, diameter| {
        let sets = thrust_ends.si() + share.si() * supports.si();
        Money(bearing.0 * sets + ends.0 * (diameter.si() / 0.032).powf(0.8))
    },
};

/// Clamped ends of a standing screw: (n_t·k_14 + k_2)·(d_0/32 mm)^0.8. Check: 2·90 + 220 at 32 mm → 400.
pub static CLAMPS_PRICE: Formula<fn(Ratio, Money, Money, Length) -> Money> = Formula {
    note: Note {
        id: "clamps-price",
        title: "price of clamps and end machining of a standing screw",
        equation: "k_b = (n_t·k_14 + k_2)·(d_0/32 mm)^0.8",
        inputs: &[("n_t", "thrust-ends"), ("k_14", "clamp-price"), ("k_2", "ends-price"), ("d_0", "nominal-diameter")],
        validity: "generic prices",
        sources: SHAPE,
    },
    apply: |ends, clamp, machining, diameter| {
        Money((ends.si() * clamp.0 + machining.0) * (diameter.si() / 0.032).powf(0.8))
    },
};

/// A pair of supports that travels with the nut: k_15·(d_0/32 mm)^0.8. Check: 650 at 32 mm → 650.
pub static SUPPORT_PAIR_PRICE: Formula<fn(Money, Length) -> Money> = Formula {
    note: Note {
        id: "support-pair-price",
        title: "price of the supports that travel with the nut",
        equation: "k_16 = k_15·(d_0/32 mm)^0.8",
        inputs: &[("k_15", "support-pair-size-price"), ("d_0", "nominal-diameter")],
        validity: "generic prices; zero without supports",
        sources: SHAPE,
    },
    apply: |price, diameter| Money(price.0 * (diameter.si() / 0.032).powf(0.8)),
};

/// A length of rack: k_4·L·K_q. Check: 424·12 m·1 → 5088.
pub static RACK_LINE_PRICE: Formula<fn(Money, Length, Ratio) -> Money> = Formula {
    note: Note {
        id: "rack-line-price",
        title: "price of one rack line",
        equation: "k_r = k_4·L_r·K_q",
        inputs: &[("k_4", "rack-metre-price"), ("L_r", "rack-length"), ("K_q", "rack-price-factor")],
        validity: "generic prices; segments are bought whole, the rest is lost in rounding",
        sources: SHAPE,
    },
    apply: |per_metre, length, factor| Money(per_metre.0 * length.si() * factor.si()),
};

/// A pinion: k_5 + k_6·m^1.5·(z/20)^1.2. Check: 40 + 22.4·3^1.5 at z 20 → 156.4.
pub static PINION_PRICE: Formula<fn(Money, Money, Length, Ratio) -> Money> = Formula {
    note: Note {
        id: "pinion-price",
        title: "price of one pinion",
        equation: "k_p = k_5 + k_6·(m_n/1 mm)^1.5·(z/20)^1.2",
        inputs: &[("k_5", "pinion-base-price"), ("k_6", "pinion-size-price"), ("m_n", "module"), ("z", "teeth")],
        validity: "generic prices",
        sources: SHAPE,
    },
    apply: |base, factor, module, teeth| {
        Money(base.0 + factor.0 * (module.si() * 1e3).powf(1.5) * (teeth.si() / 20.0).powf(1.2))
    },
};

/// Sum of two prices. Check: 5088 + 156 → 5244.
pub static PRICE_SUM: Formula<fn(Money, Money) -> Money> = Formula {
    note: Note {
        id: "price-sum",
        title: "two prices together",
        equation: "k_e = k_1 + k_2",
        inputs: &[("k_1", "first"), ("k_2", "second")],
        validity: "any",
        sources: &[Source::derived("sum")],
    },
    apply: |first, second| Money(first.0 + second.0),
};

/// Fastening a rack line: k_8·n_f + k_7·(n_s − 1) + k_9. Check: 2·192 + 35·11 + 90 → 859.
pub static FASTENING_PRICE: Formula<fn(Money, Ratio, Money, Ratio, Money) -> Money> = Formula {
    note: Note {
        id: "fastening-price",
        title: "price of fasteners, joints and gauge of one rack line",
        equation: "k_b = k_8·n_f + k_7·(n_seg − 1) + k_9",
        inputs: &[
            ("k_8", "fastener-price"),
            ("n_f", "fasteners"),
            ("k_7", "joint-price"),
            ("n_seg", "segments"),
            ("k_9", "gauge-price"),
        ],
        validity: "generic prices",
        sources: SHAPE,
    },
    apply: |fastener, fasteners, joint, segments, gauge| {
        Money(fastener.0 * fasteners.si() + joint.0 * (segments.si() - 1.0) + gauge.0)
    },
};

/// A part whose price grows with the travel: k_f + k_m·s. Check: 1100 + 550·11 m → 7150.
pub static FIXED_AND_LENGTH_PRICE: Formula<fn(Money, Money, Length) -> Money> = Formula {
    note: Note {
        id: "fixed-and-length-price",
        title: "price that grows with the travel",
        equation: "k = k_f + k_m·s",
        inputs: &[("k_f", "fixed-price"), ("k_m", "metre-price"), ("s", "travel")],
        validity: "generic prices; both parts are zero without the part",
        sources: SHAPE,
    },
    apply: |fixed, per_metre, travel| Money(fixed.0 + per_metre.0 * travel.si()),
};

/// Labour of upkeep of one drive a year: (h_2 + h_3·s)·k_L. Check: (4 h + 1 h/m·3 m)·60 → 420.
pub static UPKEEP_PRICE: Formula<fn(Time, Time, Length, Money) -> Money> = Formula {
    note: Note {
        id: "upkeep-labour",
        title: "labour of lubrication and inspection of one drive a year",
        equation: "k_I = (h_2 + h_3·s[m])·k_L",
        inputs: &[("h_2", "upkeep-hours"), ("h_3", "upkeep-hours-per-metre"), ("s", "travel"), ("k_L", "labour-rate")],
        validity: "generic hours and prices",
        sources: SHAPE,
    },
    apply: |fixed, per_metre, travel, rate| {
        let hours = (fixed.si() + per_metre.si() * travel.si()) / 3600.0;
        Money(hours * rate.0)
    },
};

/// Three prices together. Check: 100 + 20 + 3 → 123.
pub static PRICE_SUM_3: Formula<fn(Money, Money, Money) -> Money> = Formula {
    note: Note {
        id: "price-sum-3",
        title: "three prices together",
        equation: "k_e = k_1 + k_2 + k_3",
        inputs: &[("k_1", "first"), ("k_2", "second"), ("k_3", "third")],
        validity: "any",
        sources: &[Source::derived("sum")],
    },
    apply: |first, second, third| Money(first.0 + second.0 + third.0),
};

/// Sum of eight amounts: what all drives of an axis cost to buy and fit.
pub static PURCHASE_COST: Formula<fn(Money, Money, Money, Money, Money, Money, Money, Money) -> Money> = Formula {
    note: Note {
        id: "purchase-cost",
        title: "price to buy and fit",
        equation: "K_0 = K_e + K_b + K_g + K_M + K_f + K_map + K_h + K_c",
        inputs: &[
            ("K_e", "element-cost"),
            ("K_b", "support-cost"),
            ("K_g", "reduction-cost"),
            ("K_M", "motor-cost"),
            ("K_f", "feedback-cost"),
            ("K_map", "table-cost"),
            ("K_h", "fitting-cost"),
            ("K_c", "cover-cost"),
        ],
        validity: "one currency, one date",
        sources: &[Source::derived("sum")],
    },
    apply: |element, support, reduction, motor, feedback, table, fitting, cover| {
        let parts = element.0 + support.0 + reduction.0 + motor.0 + feedback.0;
        Money(parts + table.0 + fitting.0 + cover.0)
    },
};

/// The longer of two delivery times: max(t_p, t_s). Check: 6 and 4 weeks → 6 weeks.
pub static LONGER_DELIVERY: Formula<fn(Time, Time) -> Time> = Formula {
    note: Note {
        id: "longer-delivery",
        title: "longest delivery time of any part",
        equation: "t_L = max(t_p, t_s)",
        inputs: &[("t_p", "parts-lead-time"), ("t_s", "scale-lead-time")],
        validity: "parts ordered together",
        sources: &[Source::derived("what is ordered together waits for the part that comes last")],
    },
    apply: |parts, scale| Time::of_si(larger(parts.si(), scale.si())),
};
