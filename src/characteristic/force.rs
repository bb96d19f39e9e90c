//! Masses and forces of one drive.

use crate::ledger::{About, Characteristic};
use crate::units::*;

characteristics! {
    after super::demand::END;

    RIDING_MASS: Mass, "riding-mass", "m_r", "kg", "parts of the drive that ride on the slide";
    MOVING_MASS: Mass, "moving-mass", "m", "kg", "all mass that the axis moves";
    LOAD_SHARE: Ratio, "load-share", "x_d", "1", "share of the moving mass on the most loaded drive";
    DRIVEN_MASS: Mass, "driven-mass", "m_d", "kg", "moving mass on the most loaded drive";
    COUNTERWEIGHT_MASS: Mass, "counterweight-mass", "m_cb", "kg", "hanging counterweight of the most loaded drive";
    ACCELERATED_MASS: Mass, "accelerated-mass", "m_a", "kg", "all mass that the most loaded drive accelerates, with its counterweight";
    CUTTING_SHARE: Ratio, "cutting-share", "x_c", "1", "share of the cutting force on the most loaded drive";
    DRIVE_WIPER_FORCE: Force, "drive-wiper-force", "F_w,d", "N", "drag of seals, wipers, covers and cable chain on one drive";
    DRIVE_CUTTING_FORCE: Force, "drive-cutting-force", "F_c,d", "N", "cutting force on the most loaded drive";
    FRICTION_FORCE: Force, "friction-force", "F_f", "N", "friction of guides and wipers on one drive";
    PEAK_FORCE: Force, "peak-force", "F_max", "N", "largest force on one drive: the weight counts whole, whatever balances it";
    MEAN_FORCE: Force, "mean-force", "F_m", "N", "cubic mean force on one drive, weighted by travel";
    GRAVITY_FORCE: Force, "gravity-force", "F_g", "N", "weight along the axis on one drive, no friction credited, no counterbalance";
    MEAN_SPEED: Velocity, "mean-speed", "v_m", "m/min", "mean speed over the working time";
    SERVICE_DISTANCE: Length, "service-distance", "s_t", "km", "distance travelled over the service life";
    MEAN_STROKE: Length, "mean-stroke", "s_m", "mm", "mean stroke over the duty, weighted by travel";
    MOVES_PER_HOUR: Ratio, "moves-per-hour", "N_h", "1", "moves in an hour of work, each way counted";
    MOVE_TIME: Time, "move-time", "t_m", "s", "time of the shortest stroke at top speed of the axis";
    TRAVEL_PER_TURN: Length, "travel-per-turn", "p", "mm", "travel of the axis for one turn of screw or pinion";
}
