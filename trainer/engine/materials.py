"""Every constant of the trade once: its value, the range accepted, its standing and source.

Each that has a range is a default: the product's data sheet overrules it, so each calculation
takes it as a parameter. The others are limits, rules and measurements that nobody sets.
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
BOARD_GAP = Constant(
    "gap between square-edged boards", 3, "mm", 3, 3, "common practice", "no published source"
)
TAPE_TURN = Constant(
    "most that tape turns on to a face", 10, "mm", 10, 10, "common practice", "no published source"
)
COARSEST_GRIT = Constant(
    "coarsest grit for a shiny face", 40, "", 40, 40, "common practice", "no published source"
)
FINEST_GRIT = Constant(
    "finest grit for a shiny face", 60, "", 60, 60, "common practice", "no published source"
)
MAT_LAP = Constant("lap of mat on mat", 50, "mm", 0, 300, "published", _FRP_SHIPS)
STAGGER = Constant(
    "least shift of laps from layer to layer", 100, "mm", 100, 100, "published", _FRP_SHIPS
)
UPSTAND = Constant(
    "upstand above the finished roof", 150, "mm", 50, 600, "common practice", "no published source"
)
OUTLET_FLANGE = Constant(
    "mat on the deck round an outlet", 100, "mm", 50, 400, "from memory", "no published source"
)
WRAP = Constant("wrap on to each face", 50, "mm", 10, 150, "common practice", "no published source")
BEGINNER_BATCH = Constant(
    "beginner's batch", 1, "L", 0.1, 25, "common practice", "no published source"
)
BEGINNER_MOST = Constant(
    "most that a beginner mixes", 2, "L", 2, 2, "common practice", "no published source"
)
BRUSH_WIDTH = Constant(
    "width of a brush", 50, "mm", 50, 50, "common practice", "no published source"
)
WARM_WATER = Constant(
    "warmest water that drums stand in", 30, "°C", 30, 30, "common practice", "no published source"
)
SPREAD_DEPTH = Constant(
    "deepest that left-over resin is spread",
    2,
    "mm",
    2,
    2,
    "common practice",
    "no published source",
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

# Weather.
_WORKSHOP = "Rules for Classification of FRP Ships, Iranian Classification Society, 2014, workshop"
_MAGNUS = "O. A. Alduchov & R. E. Eskridge, 1996"

DEW_SLOPE = Constant(
    "slope of the dew-point formula", 17.625, "", 17.625, 17.625, "cited second-hand", _MAGNUS
)
DEW_SCALE = Constant(
    "scale of the dew-point formula", 243.04, "°C", 243.04, 243.04, "cited second-hand", _MAGNUS
)
DEW_MARGIN = Constant(
    "least surface above the dew point",
    3,
    "°C",
    3,
    3,
    "common practice",
    "ascribed to ISO 8502-4, which is written for steel; its clause was not read",
)
COLDEST = Constant(
    "coldest that resin is laid", 5, "°C", 5, 5, "common practice", "no published source"
)
COOL = Constant(
    "coldest that needs no care", 15, "°C", 15, 15, "common practice", "no published source"
)
WARM = Constant(
    "warmest that needs no care", 25, "°C", 25, 25, "common practice", "no published source"
)
HOTTEST = Constant(
    "hottest that resin is laid", 35, "°C", 35, 35, "common practice", "no published source"
)
HUMID = Constant("most humidity that needs no care", 80, "%", 80, 80, "published", _WORKSHOP)
DAMP_TIMBER = Constant(
    "most on a timber meter that needs no care",
    18,
    "%",
    18,
    18,
    "common practice",
    "no published source",
)

# Fall.
FALL_DESIGN = Constant(
    "fall designed, of one in",
    40,
    "",
    10,
    200,
    "published",
    "NHBC Standards, ch. 7.1 (2004 amendment)",
)
FALL_FINISHED = Constant(
    "fall that a finished roof keeps, of one in",
    80,
    "",
    10,
    200,
    "cited second-hand",
    "BS 6229:2018; NHBC Standards, ch. 7.1",
)

# Topcoat.
TOPCOAT_RATE = Constant(
    "topcoat on a square metre", 0.5, "kg/m²", 0.3, 1.0, "common practice", "no published source"
)
TOPCOAT_DENSITY = Constant(
    "density of topcoat", 1.2, "kg/L", 1.0, 1.6, "from memory", "pigment makes it heavier"
)
TOPCOAT_DOSE = Constant(
    "catalyst in topcoat", 2, "%", 0.5, 6, "common practice", "no published source"
)
TOPCOAT_BAND = Constant(
    "usual dose of topcoat by mass",
    2,
    "%",
    1,
    3,
    "common practice",
    "until the data sheet gives its own",
)

# Heat.
HEAT_OF_CURING = Constant(
    "heat of curing",
    398,
    "J/g",
    300,
    420,
    "published",
    "66 kJ/mol of C=C: Lucas, Borrajo & Williams, Polymer 34(15), 3216, 1993, abstract; "
    "a gram of resin with 45 % styrene follows from it",
)
RESIN_SPECIFIC_HEAT = Constant(
    "specific heat of resin", 1.8, "J/(g·K)", 1.0, 2.5, "from memory", "polymers lie at 1 to 2.5"
)
GLASS_SPECIFIC_HEAT = Constant(
    "specific heat of glass", 0.8, "J/(g·K)", 0.6, 1.0, "from memory", "glasses lie at 0.7 to 0.9"
)

_CASTINGS = "peaks inside two polyester castings: Polymers 2024, 16(17), 2391"
_FLASH = "IEC 60079-20-1 and NFPA 497, rounded down; read in the library 'chemicals' 1.5"
_LIMITS = "Health and Safety Executive, 'Plastics – FAQs'"

COOLER_CASTING = Constant("peak measured in a casting", 126, "°C", 126, 126, "published", _CASTINGS)
HOTTER_CASTING = Constant(
    "peak measured in a hotter casting", 162, "°C", 162, 162, "published", _CASTINGS
)

# Fumes.
STYRENE_LIMIT = Constant(
    "British limit for styrene over eight hours", 100, "ppm", 100, 100, "published", _LIMITS
)
STYRENE_SHORT_LIMIT = Constant(
    "British limit for styrene over fifteen minutes", 250, "ppm", 250, 250, "published", _LIMITS
)
ACETONE_FLASH = Constant("flash point of acetone", -20, "°C", -20, -20, "cited second-hand", _FLASH)
STYRENE_FLASH = Constant("flash point of styrene", 30, "°C", 30, 30, "cited second-hand", _FLASH)

# Curing.
_RATES = "J. Appl. Polym. Sci. 102, 1870, 2006, abstract: 40 to 60 kJ/mol"

GAS_CONSTANT = Constant(
    "gas constant",
    8.314462618,
    "J/(mol·K)",
    8.314462618,
    8.314462618,
    "exact",
    "International System of Units, 2019, to ten digits",
)
CURING_ENERGY = Constant(
    "activation energy",
    52.9,
    "kJ/mol",
    20,
    120,
    "published",
    f"the rate doubles from 298 to 308 K; {_RATES}",
)
LOW_ENERGY = Constant("least activation energy", 40, "kJ/mol", 40, 40, "published", _RATES)
HIGH_ENERGY = Constant(
    "greatest activation energy",
    82.6,
    "kJ/mol",
    82.6,
    82.6,
    "common practice",
    "25 min at 20 °C against 45 min at 15 °C",
)
DOSE_ORDER = Constant(
    "order of the dose", 0.5, "", 0.1, 2, "from memory", "the free-radical rate law"
)
LOW_ORDER = Constant(
    "least order of the dose", 0.5, "", 0.5, 0.5, "from memory", "the free-radical rate law"
)
HIGH_ORDER = Constant(
    "greatest order of the dose", 1, "", 1, 1, "from memory", "polyesters depart from the law"
)
GRADUATION = Constant(
    "graduation of the syringe", 1, "ml", 0.05, 50, "common practice", "no published source"
)

#: By the name that lessons call each: "mat-lap".
NAMED: dict[str, Constant] = {
    name.lower().replace("_", "-"): value
    for name, value in list(globals().items())
    if isinstance(value, Constant)
}
CONSTANTS: tuple[Constant, ...] = tuple(NAMED.values())
