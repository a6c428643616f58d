"""The exact sizes that conversions are made with, and the one way to round up.

A conversion that changes a number is a named part of its line, so that nobody has to guess
where a thousand came from.
"""

from trainer.engine.working import Part

G_PER_KG = Part(1000, "g/kg", "grams in a kilogram")
ML_PER_L = Part(1000, "ml/L", "millilitres in a litre")
MM_PER_M = Part(1000, "mm/m", "millimetres in a metre")
MM2_PER_M2 = Part(1_000_000, "mm²/m²", "square millimetres in a square metre")
J_PER_KJ = Part(1000, "J/kJ", "joules in a kilojoule")


def whole_mm(metres: float) -> int:
    """Return a length in whole millimetres: 2.9 m is 2900 mm, whatever floats make of it."""
    return round(metres * MM_PER_M.value)


def whole_g(kilograms: float) -> int:
    """Return a mass in whole grams."""
    return round(kilograms * G_PER_KG.value)


def rounded_up(amount: int, each: int) -> int:
    """Return how many of `each` it takes to reach `amount`, both in the same whole unit.

    An exact multiple is not rounded on. Raises ZeroDivisionError when `each` is nothing.
    """
    return -(-amount // each)
