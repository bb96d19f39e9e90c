"""Money: fitting, upkeep, exchanges, purchase and whole-life cost, and the merit that decides (docs/method.md sections 6 and 8)."""

import numpy as np

YEAR = 365.25 * 86400.0
HOUR = 3600.0


def basis(y, prices, prefix):
    """What of the price basis belongs to a screw or a rack drive whatever its parts."""
    y["supply-efficiency"] = prices["drive-efficiency"]
    y["fitting-hours"] = prices[f"{prefix}-fitting-hours"]
    y["fitting-hours-per-metre"] = prices[f"{prefix}-fitting-hours-per-metre"]
    y["labour-rate"] = prices["labour-rate"]
    y["datum-price"] = prices[f"{prefix}-datum-per-metre"]
    y["upkeep-hours"] = prices[f"{prefix}-upkeep-hours"]
    y["upkeep-hours-per-metre"] = prices[f"{prefix}-upkeep-hours-per-metre"]
    y["lubricant-price"] = prices[f"{prefix}-lubricant"]
    s, n = y["travel"], y["drives"]
    y["fitting-labour"] = (y["fitting-hours"] + y["fitting-hours-per-metre"] * s) / HOUR * y["labour-rate"]
    y["datum-line-price"] = s * y["datum-price"]
    y["fitting-price"] = y["fitting-labour"] + y["datum-line-price"]
    y["inspection-price"] = (y["upkeep-hours"] + y["upkeep-hours-per-metre"] * s) / HOUR * y["labour-rate"]
    y["upkeep-price"] = y["inspection-price"] + y["lubricant-price"]
    for cost, price in (("fitting-labour-cost", "fitting-labour"), ("datum-cost", "datum-line-price"),
                        ("fitting-cost", "fitting-price"), ("inspection-cost", "inspection-price"),
                        ("lubricant-cost", "lubricant-price"), ("upkeep-cost", "upkeep-price")):
        y[cost] = n * y[price]


def exchanges(y, life):
    """Present value of one unit at each exchange that falls within the years of service, as a geometric series."""
    per_year, rate = y["hours-per-year"], y["discount-rate"]
    count = np.ceil(y["service-years"] / YEAR * per_year / life) - 1.0
    step = (1.0 + rate) ** (-np.asarray(life) / per_year)
    series = step * (1.0 - step**count) / np.where(step < 1.0, 1.0 - step, 1.0)
    return np.where(rate == 0.0, count, series)


def exchange(y, name, price, hours, life):
    """Enters the exchange of one kind of part."""
    y[f"{name}-exchange-work"], y[f"{name}-exchange-standstill"] = hours["work"], hours["standstill"]
    y[f"{name}-exchanges"] = exchanges(y, life)
    each = price + hours["work"] / HOUR * y["labour-rate"] + hours["standstill"] / HOUR * y["downtime-price"]
    y[f"{name}-exchange-price"] = y["drives"] * each
    y[f"{name}-replacement"] = y[f"{name}-exchanges"] * y[f"{name}-exchange-price"]


def whole(y):
    y["purchase-cost"] = (
        y["element-cost"] + y["support-cost"] + y["reduction-cost"] + y["motor-cost"] + y["feedback-cost"]
        + y["table-cost"] + y["fitting-cost"] + y["cover-cost"]
    )
    y["whole-life-cost"] = (
        y["purchase-cost"] + (y["energy-cost"] + y["upkeep-cost"]) * y["annuity"] + y["replacement-cost"]
    )


def merit(y, prefer, advice):
    """Less is better; `advice` is the sum of the weights of advice not followed."""
    weights = prefer or {"whole-life-cost": 1.0}
    alone = not any(weights[key] for key in weights if key != "whole-life-cost")
    if not prefer or alone:
        return y["whole-life-cost"] * (1.0 + advice)
    scaled = {
        "whole-life-cost": y["whole-life-cost"] / 10000.0,
        "accuracy": y["tool-error"] / 50e-6,
        "stiffness": 1e8 / y["total-stiffness"],
        "upkeep": y["upkeep-cost"] / 1000.0,
    }
    share = sum(weights.values())
    return sum(weights.get(key, 0.0) / share * value for key, value in scaled.items()) * (1.0 + advice)
