//! What every picture has: its words for readers of the screen, and the inks that colour-blind readers tell apart.
//!
//! Method: the words come first inside the SVG, and the picture is named by them. Colours: Okabe and Ito, from memory.
//! Limits: nothing rests on colour alone; each picture adds shapes, letters or words.

use plotters::style::RGBColor;

/// Lines and words.
pub const INK: RGBColor = RGBColor(30, 30, 30);
/// Lines in the background.
pub const FAINT: RGBColor = RGBColor(215, 215, 215);

/// An SVG with its title and its description.
pub fn named(svg: &str, title: &str, description: &str) -> Result<String, String> {
    let Some((head, rest)) = svg.split_once('>') else { return Err("the picture has no beginning".into()) };
    Ok(format!(
        "{head} role=\"img\" aria-labelledby=\"title desc\">\n<title id=\"title\">{}</title>\n<desc id=\"desc\">{}</desc>{rest}",
        escaped(title),
        escaped(description)
    ))
}

fn escaped(text: &str) -> String {
    text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;").replace('"', "&quot;")
}

/// Letter and colour of a family; of none where no drive is admissible.
pub fn mark(family: Option<&str>) -> (&'static str, RGBColor) {
    match family {
        Some("ball-screw") => ("B", RGBColor(0, 114, 178)),
        Some("driven-nut") => ("N", RGBColor(86, 180, 233)),
        Some("straight-rack") => ("S", RGBColor(0, 158, 115)),
        Some("helical-rack") => ("H", RGBColor(230, 159, 0)),
        Some("twin-pinion") => ("T", RGBColor(213, 94, 0)),
        Some(_) => ("?", RGBColor(204, 121, 167)),
        None => ("–", RGBColor(150, 150, 150)),
    }
}
