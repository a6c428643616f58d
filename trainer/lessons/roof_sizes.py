"""The sizes that a roof is bought in, from stock.toml where the roof doesn't give them."""

from collections.abc import Mapping

from trainer.engine.conversions import MM_PER_M
from trainer.lessons.stock import Sizes

#: Where each size that a roof is bought in stands in stock.toml: material, list, place in it.
_STOCK: Mapping[str, tuple[str, str, int]] = {
    "tape_roll_m": ("tape", "roll_m", -1),
    "bandage_roll_m": ("bandage", "roll_m", -1),
    "mat_roll_mm": ("mat", "width_m", 0),
    "mat_roll_m": ("mat", "roll_m", -1),
    "trim_m": ("trim", "lengths_m", -1),
    "resin_tin_kg": ("resin", "tins_kg", -1),
    "catalyst_bottle_ml": ("catalyst", "bottles_ml", -1),
    "topcoat_tin_kg": ("topcoat", "tins_kg", -1),
}


def sold_from(stock: Mapping[str, Sizes]) -> dict[str, float]:
    """Return the sizes to buy in: the first width of mat, of everything else the largest."""
    return {
        field: sizes[place] * (MM_PER_M.value if field.endswith("_mm") else 1)
        for field, (material, name, place) in _STOCK.items()
        if material in stock and (sizes := stock[material].sizes.get(name))
    }


def sold_standing(stock: Mapping[str, Sizes]) -> dict[str, str]:
    """Return how well each size that stock.toml gives is known: "invented"."""
    return {field: stock[_STOCK[field][0]].standing for field in sold_from(stock)}
