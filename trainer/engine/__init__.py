"""The engine: calculations of the trade, each written once. It knows no web, no files, no clock."""

from trainer.engine.bandage import bandage_glass, bandage_length, resin_for_bandage
from trainer.engine.batches import batch_for_pace, equal_batches, working_time
from trainer.engine.catalyst import catalyst_by_mass, catalyst_by_ml_per_kg, catalyst_by_volume
from trainer.engine.cautions import cautions_for
from trainer.engine.dose import percent_by_mass, percent_by_ml_per_kg, percent_by_volume
from trainer.engine.drivers import Working, answer, drive, line_keys, work
from trainer.engine.errors import (
    BadRoof,
    EngineError,
    NoSuch,
    NotAFigure,
    OtherKind,
    OutOfRange,
    Refused,
    Unclear,
)
from trainer.engine.laminate import (
    glass_content_from_ratio,
    glass_content_laid,
    laminate_thickness,
    ratio_from_glass_content,
    ratio_laid,
)
from trainer.engine.marking import Asked, Marked, MarkedLine, Verdict, mark
from trainer.engine.mat import glass_in_mat, resin_for_area, resin_for_mat
from trainer.engine.patch import open_end_patch, resin_for_patches
from trainer.engine.resin import resin_kilograms, resin_left, resin_litres, spread_board
from trainer.engine.schema import Given, Parameter
from trainer.engine.shape import (
    area_left,
    l_shape_area,
    outline_area,
    rectangle_area,
    side_length,
)
from trainer.engine.tape import bare_board, tape_length, tape_rolls
from trainer.engine.tolerance import Tolerance
from trainer.engine.totals import mat_with_laps, total_area, total_length, total_mass
from trainer.engine.units import Reading, read_quantity, show
from trainer.engine.working import (
    METHODS,
    Calculation,
    Line,
    Method,
    Part,
    calculation,
    method_named,
    under,
)

#: Stored beside every attempt. Raise it when a calculation gives other figures than before.
ENGINE_VERSION = "1"

__all__ = [
    "ENGINE_VERSION",
    "METHODS",
    "Asked",
    "BadRoof",
    "Calculation",
    "EngineError",
    "Given",
    "Line",
    "Marked",
    "MarkedLine",
    "Method",
    "NoSuch",
    "NotAFigure",
    "OtherKind",
    "OutOfRange",
    "Parameter",
    "Part",
    "Reading",
    "Refused",
    "Tolerance",
    "Unclear",
    "Verdict",
    "Working",
    "answer",
    "area_left",
    "bandage_glass",
    "bandage_length",
    "bare_board",
    "batch_for_pace",
    "calculation",
    "catalyst_by_mass",
    "catalyst_by_ml_per_kg",
    "catalyst_by_volume",
    "cautions_for",
    "drive",
    "equal_batches",
    "glass_content_from_ratio",
    "glass_content_laid",
    "glass_in_mat",
    "l_shape_area",
    "laminate_thickness",
    "line_keys",
    "mark",
    "mat_with_laps",
    "method_named",
    "open_end_patch",
    "outline_area",
    "percent_by_mass",
    "percent_by_ml_per_kg",
    "percent_by_volume",
    "ratio_from_glass_content",
    "ratio_laid",
    "read_quantity",
    "rectangle_area",
    "resin_for_area",
    "resin_for_bandage",
    "resin_for_mat",
    "resin_for_patches",
    "resin_kilograms",
    "resin_left",
    "resin_litres",
    "show",
    "side_length",
    "spread_board",
    "tape_length",
    "tape_rolls",
    "total_area",
    "total_length",
    "total_mass",
    "under",
    "work",
    "working_time",
]
