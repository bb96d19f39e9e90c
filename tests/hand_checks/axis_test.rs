//! Rows worked by hand: the quantities of an axis test.

pub const ROWS: &[super::Row] = &[
    // (1 + 2 + 6)/3
    ("mean-deviation deviations=1um,2um,6um", "mm", "0.0030"),
    // √((4 + 1 + 0 + 1 + 4)/4) = √2.5
    ("deviation-scatter deviations=-2um,-1um,0um,1um,2um", "mm", "0.0015811"),
    ("bidirectional-mean mean-up=5um mean-down=2um", "mm", "0.0035"),
    ("reversal-at-target mean-up=2um mean-down=5um", "mm", "-0.0030"),
    ("unidirectional-repeatability scatter=1.5um", "mm", "0.0060"),
    // 2 + 4 + 3; 4·3 above 6 + 2 + 0; 4·3 above 2 + 6 + 1
    ("repeatability-at-target scatter-up=1um scatter-down=2um reversal=-3um", "mm", "0.0090"),
    ("repeatability-at-target scatter-up=3um scatter-down=1um reversal=0um", "mm", "0.0120"),
    ("repeatability-at-target scatter-up=1um scatter-down=3um reversal=1um", "mm", "0.0120"),
    ("band-upper-edge mean=5um scatter=1.5um", "mm", "0.0080"),
    ("band-lower-edge mean=5um scatter=1.5um", "mm", "0.0020"),
    ("deviation-range greatest=5um least=-8um", "mm", "0.0130"),
    ("guarded-value value=50um uncertainty=2um", "mm", "0.0520"),
    ("temperature-of-slope slope=23um/m expansion=11.5um/mK", "K", "2.0"),
];
