"""What passes through a deck: rooflights, pipes and outlets, as somebody describes them."""

from dataclasses import dataclass
from typing import Annotated

from trainer.engine.schema import Given

_PRACTICE = "common practice"
_MEMORY = "from memory"


@dataclass(frozen=True, slots=True)
class Rooflight:
    """A rectangular opening with a kerb round it; x and y are its lower left corner."""

    x_m: Annotated[float, Given("place along the roof", "m", -100, 100)]
    y_m: Annotated[float, Given("place up the roof", "m", -100, 100)]
    length_m: Annotated[float, Given("length of the rooflight", "m", 0.1, 6)]
    width_m: Annotated[float, Given("width of the rooflight", "m", 0.1, 6)]
    kerb_mm: Annotated[float, Given("height of the kerb", "mm", 50, 600, _PRACTICE)] = 150


@dataclass(frozen=True, slots=True)
class Pipe:
    """A round pipe that comes up through the roof; x and y are its middle."""

    x_m: Annotated[float, Given("place along the roof", "m", -100, 100)]
    y_m: Annotated[float, Given("place up the roof", "m", -100, 100)]
    diameter_mm: Annotated[float, Given("diameter of the pipe", "mm", 20, 600)]
    up_mm: Annotated[float, Given("collar turned up the pipe", "mm", 50, 600, _PRACTICE)] = 150


@dataclass(frozen=True, slots=True)
class Outlet:
    """A round outlet in the deck; x and y are its middle."""

    x_m: Annotated[float, Given("place along the roof", "m", -100, 100)]
    y_m: Annotated[float, Given("place up the roof", "m", -100, 100)]
    diameter_mm: Annotated[float, Given("diameter of the outlet", "mm", 20, 600)]
    flange_mm: Annotated[float, Given("mat on the deck round it", "mm", 50, 400, _MEMORY)] = 100


Opening = Rooflight | Pipe | Outlet
