"""Every constant of the trade once: its value, the range accepted, its standing and source.

Each is a default that the product's data sheet overrules, so each calculation takes it as a
parameter.
"""

from dataclasses import dataclass
from typing import Literal

from trainer.engine.schema import Given

Standing = Literal["published", "cited second-hand", "common practice", "from memory", "exact"]


@dataclass(frozen=True, slots=True)
class Constant:
    """One figure that calculations start from."""

    words: str
    value: float
    unit: str
    low: float
    high: float
    standing: Standing
    source: str

    def __post_init__(self) -> None:
        if not self.low <= self.value <= self.high:
            raise ValueError(f"The {self.words} lies outside its own range.")

    @property
    def given(self) -> Given:
        """What a calculation's parameter with this default accepts."""
        return Given(self.words, self.unit, self.low, self.high, self.told_standing)

    @property
    def told_standing(self) -> str:
        """How the figure is known, with its source where it has been read in one."""
        sourced = self.standing in ("published", "cited second-hand")
        return f"{self.standing}: {self.source}" if sourced else self.standing


_ISO_12215 = "ISO 12215-5:2008, Annex C"
_BOAT_BUILDING = "Practical Action, KnO-100378 'Fibreglass boat building', p. 2"
_FRP_SHIPS = "Rules for Classification of FRP Ships, Iranian Classification Society, 2014, 301"
_HAND_LAY_UP = "Univ. of Southern Mississippi, Polymer Science Learning Center, 'Hand lay up'"

RESIN_DENSITY = Constant(
    "density of liquid resin", 1.10, "kg/L", 0.95, 1.30, "common practice", "no published source"
)
CURED_RESIN_DENSITY = Constant(
    "density of cured resin", 1.20, "kg/L", 1.05, 1.35, "cited second-hand", _ISO_12215
)
GLASS_DENSITY = Constant(
    "density of E-glass", 2.56, "kg/L", 2.4, 2.7, "cited second-hand", _ISO_12215
)
CATALYST_DENSITY = Constant(
    "density of catalyst", 1.17, "kg/L", 1.0, 1.3, "from memory", "MEKP solutions lie at 1.1 to 1.2"
)
MAT_WEIGHT = Constant("weight of mat", 450, "g/m²", 100, 1200, "published", _BOAT_BUILDING)
RESIN_TO_GLASS = Constant("resin to glass, by mass", 2.5, "", 1.5, 4, "published", _BOAT_BUILDING)
GLASS_CONTENT = Constant(
    "glass content", 30, "%", 15, 45, "cited second-hand", "ISO 12215-5:2008, Table C.2"
)
ALLOWANCE = Constant(
    "allowance for deck, bucket and roller",
    10,
    "%",
    0,
    50,
    "common practice",
    "no published source",
)
CATALYST_DOSE = Constant("catalyst", 2, "%", 0.5, 6, "published", _HAND_LAY_UP)
DOSE_BAND = Constant(
    "usual dose by mass", 2, "%", 1, 4, "common practice", "until the data sheet gives its own"
)
LEAST_BARE_BOARD = Constant(
    "least bare board beside the tape", 10, "mm", 10, 10, "common practice", "no published source"
)
BANDAGE_WIDTH = Constant(
    "width of bandage", 75, "mm", 25, 300, "common practice", "no published source"
)
TAPE_WIDTH = Constant("width of tape", 50, "mm", 25, 300, "common practice", "no published source")
TAPE_CARRY = Constant(
    "tape carried past a meeting joint", 50, "mm", 0, 300, "common practice", "no published source"
)
MAT_LAP = Constant("lap of mat on mat", 50, "mm", 0, 300, "published", _FRP_SHIPS)
WRAP = Constant("wrap on to each face", 50, "mm", 10, 150, "common practice", "no published source")
BEGINNER_BATCH = Constant(
    "beginner's batch", 1, "L", 0.1, 25, "common practice", "no published source"
)
WORKING_SHARE = Constant(
    "share of the gel time", 2 / 3, "", 0.4, 0.8, "common practice", "no published source"
)
MIXING_TIME = Constant("time to mix", 2, "min", 0, 5, "common practice", "no published source")
LEAST_WORKING_TIME = Constant(
    "least working time", 5, "min", 5, 5, "common practice", "no published source"
)
ML_PER_KG_FOR_ONE_PERCENT = Constant(
    "catalyst for 1 % by the millilitre rule",
    10,
    "ml/kg",
    10,
    10,
    "common practice",
    "the rule takes 1 ml for 1 g",
)

CONSTANTS: tuple[Constant, ...] = tuple(
    value for value in list(globals().values()) if isinstance(value, Constant)
)
