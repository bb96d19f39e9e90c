//! Results that stand in for those of a function, by its type.

use syn::{Expr, GenericArgument, PathArguments, Type};

/// Quantities that are made of an SI value.
const QUANTITIES: &[&str] = &[
    "Length",
    "Area",
    "Angle",
    "Ratio",
    "Time",
    "Mass",
    "Velocity",
    "Acceleration",
    "Jerk",
    "AngularVelocity",
    "AngularAcceleration",
    "Force",
    "Torque",
    "Energy",
    "Power",
    "Pressure",
    "MomentOfInertia",
    "LinearMassDensity",
    "Frequency",
    "TemperatureInterval",
    "Stiffness",
    "TorsionalStiffness",
    "Revolutions",
    "CirculationSpeed",
    "LoopGain",
    "Expansion",
    "Voltage",
    "CelsiusTemperature",
    "LineLoad",
    "HeatTransfer",
    "Money",
];

/// What a function of this type may answer in place of what it works out, with the words for it.
pub fn results(output: &Type) -> Vec<(String, Expr)> {
    let Type::Path(path) = output else { return Vec::new() };
    let Some(last) = path.path.segments.last() else { return Vec::new() };
    let name = last.ident.to_string();
    let texts: Vec<String> = match name.as_str() {
        "f64" => vec!["0.0".into(), "1.0".into()],
        "bool" => vec!["true".into(), "false".into()],
        "usize" | "u64" | "u32" | "u16" => vec!["0".into(), "1".into()],
        "Option" => vec!["None".into()],
        "Vec" if arguments(&last.arguments) => vec!["Vec::new()".into()],
        "String" => vec!["String::new()".into()],
        _ if QUANTITIES.contains(&name.as_str()) => {
            ["0.0", "1.0"].iter().map(|value| format!("crate::units::Measure::of_si({value})")).collect()
        }
        _ => Vec::new(),
    };
    let read = |text: String| {
        let expr = syn::parse_str(&text).expect("an expression");
        (text.replace("crate::units::Measure::", ""), expr)
    };
    texts.into_iter().map(read).collect()
}

fn arguments(arguments: &PathArguments) -> bool {
    matches!(arguments, PathArguments::AngleBracketed(list) if list.args.iter().any(|one| matches!(one, GenericArgument::Type(_))))
}
