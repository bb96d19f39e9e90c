//! Turns a list of characteristics into constants, one slot of the ledger each, and a table of what is told of them.
//!
//! Method: an enum counts the names of a list; each list begins where the one before it ends. A phased characteristic
//! takes a slot a phase, behind all single ones. Limits: none.

macro_rules! characteristics {
    (after $base:expr; $($name:ident: $quantity:ident, $id:literal, $symbol:literal, $unit:literal, $words:literal;)*) => {
        #[allow(non_camel_case_types, clippy::upper_case_acronyms)]
        enum Single { $($name,)* COUNT }
        const BASE: usize = $base;
        pub(super) const END: usize = BASE + Single::COUNT as usize;
        $(
            #[doc = $words]
            pub const $name: Characteristic<$quantity> = Characteristic::at_slot(BASE + Single::$name as usize);
        )*
        pub(super) const ABOUT: &[About] = &[
            $(About { id: $id, symbol: $symbol, unit: $unit, words: $words, phased: false, dimension: <$quantity as Measure>::DIMENSION },)*
        ];
    };
}

macro_rules! phased_characteristics {
    (after $base:expr; $($name:ident: $quantity:ident, $id:literal, $symbol:literal, $unit:literal, $words:literal;)*) => {
        #[allow(non_camel_case_types, clippy::upper_case_acronyms)]
        enum Phased { $($name,)* COUNT }
        const BASE: usize = $base;
        /// How many slots the ledger has.
        pub const END: usize = BASE + Phased::COUNT as usize * MOST_PHASES;
        $(
            #[doc = $words]
            pub const $name: PhaseCharacteristic<$quantity> =
                PhaseCharacteristic::at_slot(BASE + Phased::$name as usize * MOST_PHASES);
        )*
        pub(super) const ABOUT: &[About] = &[
            $(About { id: $id, symbol: $symbol, unit: $unit, words: $words, phased: true, dimension: <$quantity as Measure>::DIMENSION },)*
        ];
    };
}
