//! Turns the list of characteristics into constants, one slot of the ledger each, and a table of what is told of them.
//!
//! Method: two enums count the names; a phased one takes a slot a phase, behind all single ones. Limits: none.

macro_rules! characteristics {
    (
        single { $($name:ident: $quantity:ident, $id:literal, $symbol:literal, $unit:literal, $words:literal;)* }
        phased { $($phased:ident: $phased_quantity:ident, $phased_id:literal, $phased_symbol:literal, $phased_unit:literal, $phased_words:literal;)* }
    ) => {
        #[allow(non_camel_case_types, clippy::upper_case_acronyms)]
        enum Single { $($name,)* COUNT }
        #[allow(non_camel_case_types, clippy::upper_case_acronyms)]
        enum Phased { $($phased,)* COUNT }
        pub(super) const SINGLES: usize = Single::COUNT as usize;
        /// How many slots the ledger has.
        pub const SLOTS: usize = SINGLES + Phased::COUNT as usize * MOST_PHASES;
        $(
            #[doc = $words]
            pub const $name: Characteristic<$quantity> = Characteristic::at_slot(Single::$name as usize);
        )*
        $(
            #[doc = $phased_words]
            pub const $phased: PhaseCharacteristic<$phased_quantity> =
                PhaseCharacteristic::at_slot(SINGLES + Phased::$phased as usize * MOST_PHASES);
        )*
        pub(super) static ABOUT: &[About] = &[
            $(About { id: $id, symbol: $symbol, unit: $unit, words: $words, phased: false, dimension: <$quantity as Measure>::DIMENSION },)*
            $(About { id: $phased_id, symbol: $phased_symbol, unit: $phased_unit, words: $phased_words, phased: true, dimension: <$phased_quantity as Measure>::DIMENSION },)*
        ];
    };
}
