"""The engine: calculations of the trade, each written once. It knows no web, no files, no clock."""

from trainer.engine.area_to_syringe import catalyst_for_area
from trainer.engine.band import dose_for_gel, gel_long_end, gel_short_end
from trainer.engine.bandage import bandage_glass, bandage_length, resin_for_bandage
from trainer.engine.batches import batch_for_pace, equal_batches, working_time
from trainer.engine.catalyst import catalyst_by_mass, catalyst_by_ml_per_kg, catalyst_by_volume
from trainer.engine.cautions import cautions_for
from trainer.engine.collar import kerb_collar, outlet_collar, pipe_collar
from trainer.engine.cure import gel_at_dose, gel_at_temperature
from trainer.engine.dose import percent_by_mass, percent_by_ml_per_kg, percent_by_volume
from trainer.engine.drivers import Working, answer, drive, line_keys, work
from trainer.engine.drops import lap_shift, last_drop, mat_drops, mat_length, mat_rolls
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
from trainer.engine.fall import drop_per_metre, fall_drop, fall_ratio
from trainer.engine.heat import adiabatic_rise, laminate_rise, leftover_heat, leftover_peak
from trainer.engine.laminate import (
    glass_content_from_ratio,
    glass_content_laid,
    laminate_thickness,
    ratio_from_glass_content,
    ratio_laid,
)
from trainer.engine.layers import (
    resin_for_layers,
    thickness_of_layers,
    weight_of_roof,
    weight_per_m2,
)
from trainer.engine.marking import Asked, Marked, MarkedLine, Verdict, mark
from trainer.engine.mat import glass_in_mat, resin_for_area, resin_for_mat
from trainer.engine.patch import open_end_patch, resin_for_patches
from trainer.engine.resin import resin_kilograms, resin_left, resin_litres, spread_board
from trainer.engine.rolls import bandage_rolls, bottles, laps_in_run, pieces_in_run, tins
from trainer.engine.schema import Given, Parameter
from trainer.engine.shape import (
    area_left,
    l_shape_area,
    outline_area,
    rectangle_area,
    side_length,
)
from trainer.engine.stock import stock_bound, waste_percent
from trainer.engine.syringe import syringe_mark
from trainer.engine.tape import bare_board, tape_length, tape_rolls
from trainer.engine.tolerance import Tolerance
from trainer.engine.topcoat import topcoat_catalyst, topcoat_litres, topcoat_mass
from trainer.engine.totals import mat_with_laps, total_area, total_length, total_mass
from trainer.engine.two_cups import activation_energy, dose_order
from trainer.engine.units import Reading, read_quantity, show
from trainer.engine.upstand import turn_down, upstand_mat
from trainer.engine.weather import dew_point, surface_margin
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
    "activation_energy",
    "adiabatic_rise",
    "answer",
    "area_left",
    "bandage_glass",
    "bandage_length",
    "bandage_rolls",
    "bare_board",
    "batch_for_pace",
    "bottles",
    "calculation",
    "catalyst_by_mass",
    "catalyst_by_ml_per_kg",
    "catalyst_by_volume",
    "catalyst_for_area",
    "cautions_for",
    "dew_point",
    "dose_for_gel",
    "dose_order",
    "drive",
    "drop_per_metre",
    "equal_batches",
    "fall_drop",
    "fall_ratio",
    "gel_at_dose",
    "gel_at_temperature",
    "gel_long_end",
    "gel_short_end",
    "glass_content_from_ratio",
    "glass_content_laid",
    "glass_in_mat",
    "kerb_collar",
    "l_shape_area",
    "laminate_rise",
    "laminate_thickness",
    "lap_shift",
    "laps_in_run",
    "last_drop",
    "leftover_heat",
    "leftover_peak",
    "line_keys",
    "mark",
    "mat_drops",
    "mat_length",
    "mat_rolls",
    "mat_with_laps",
    "method_named",
    "open_end_patch",
    "outlet_collar",
    "outline_area",
    "percent_by_mass",
    "percent_by_ml_per_kg",
    "percent_by_volume",
    "pieces_in_run",
    "pipe_collar",
    "ratio_from_glass_content",
    "ratio_laid",
    "read_quantity",
    "rectangle_area",
    "resin_for_area",
    "resin_for_bandage",
    "resin_for_layers",
    "resin_for_mat",
    "resin_for_patches",
    "resin_kilograms",
    "resin_left",
    "resin_litres",
    "show",
    "side_length",
    "spread_board",
    "stock_bound",
    "surface_margin",
    "syringe_mark",
    "tape_length",
    "tape_rolls",
    "thickness_of_layers",
    "tins",
    "topcoat_catalyst",
    "topcoat_litres",
    "topcoat_mass",
    "total_area",
    "total_length",
    "total_mass",
    "turn_down",
    "under",
    "upstand_mat",
    "waste_percent",
    "weight_of_roof",
    "weight_per_m2",
    "work",
    "working_time",
]
