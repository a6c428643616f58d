"""The shape of a deck: its sides and its area."""

from typing import Annotated

from trainer.engine.errors import Refused
from trainer.engine.schema import Given
from trainer.engine.working import Calculation, Line, Part, calculation

Side = Annotated[float, Given("length", "m", 0.1, 100)]
Across = Annotated[float, Given("width", "m", 0.1, 100)]


@calculation
def rectangle_area(length_m: Side, width_m: Across) -> Calculation:
    """Return the square metres of a rectangular deck.

    area = length × width.

    Args:
        length_m: length of the deck, 0.1–100 m.
        width_m: its width, 0.1–100 m.

    Raises:
        OutOfRange: an argument outside its range.
    """
    return (
        yield Line(
            "area",
            "area of the deck",
            "m²",
            length_m * width_m,
            "length * width",
            {"length": Part(length_m, "m", "length"), "width": Part(width_m, "m", "width")},
        )
    )


@calculation
def l_shape_area(
    length_m: Side,
    width_m: Across,
    cut_length_m: Annotated[float, Given("length of the missing corner", "m", 0.1, 50)],
    cut_width_m: Annotated[float, Given("width of the missing corner", "m", 0.1, 50)],
) -> Calculation:
    """Return the square metres of an L-shaped deck: the whole rectangle less its missing corner.

    whole = length × width; missing = its length × its width; area = whole − missing.

    Args:
        length_m: length of the whole rectangle, 0.1–100 m.
        width_m: its width, 0.1–100 m.
        cut_length_m: length of the missing corner, 0.1–50 m.
        cut_width_m: its width, 0.1–50 m.

    Raises:
        OutOfRange: an argument outside its range.
        Refused: the missing corner is as long or as wide as the whole.
    """
    if cut_length_m >= length_m or cut_width_m >= width_m:
        raise Refused("The missing corner must be shorter and narrower than the whole deck.")
    whole = yield Line(
        "whole",
        "area of the whole rectangle",
        "m²",
        length_m * width_m,
        "length * width",
        {"length": Part(length_m, "m", "length"), "width": Part(width_m, "m", "width")},
    )
    missing = yield Line(
        "missing",
        "area of the missing corner",
        "m²",
        cut_length_m * cut_width_m,
        "length * width",
        {
            "length": Part(cut_length_m, "m", "length of the missing corner"),
            "width": Part(cut_width_m, "m", "width of the missing corner"),
        },
    )
    return (
        yield Line(
            "area",
            "area of the deck",
            "m²",
            whole - missing,
            "whole - missing",
            {
                "whole": Part(whole, "m²", "whole rectangle"),
                "missing": Part(missing, "m²", "missing corner"),
            },
        )
    )


@calculation
def outline_area(
    across_m: Annotated[tuple[float, ...], Given("corner's place along", "m", 0, 100)],
    up_m: Annotated[tuple[float, ...], Given("corner's place up", "m", 0, 100)],
) -> Calculation:
    """Return the square metres inside any outline from its corners, anticlockwise.

    From each corner to the next, along × next up − next along × up; area = half their sum, the
    surveyor's rule (Gauss's area formula, from memory).

    Args:
        across_m: each corner's place along from the leftmost one, 0–100 m.
        up_m: each corner's place up from the lowest one, 0–100 m, in the same order.

    Raises:
        OutOfRange: a place outside its range.
        Refused: the lists differ in length, or the corners go clockwise.
    """
    if len(across_m) != len(up_m):
        raise Refused("Each corner needs its place along and its place up. Give as many of each.")
    products, parts, twice = [], {}, 0.0
    for here, (along, up) in enumerate(zip(across_m, up_m, strict=True)):
        after = (here + 1) % len(up_m)
        parts[f"x{here + 1}"] = Part(along, "m", f"corner {here + 1} along")
        parts[f"y{here + 1}"] = Part(up, "m", f"corner {here + 1} up")
        products.append(f"x{here + 1} * y{after + 1} - x{after + 1} * y{here + 1}")
        twice += along * up_m[after] - across_m[after] * up
    doubled = yield Line("twice", "twice the area", "m²", twice, " + ".join(products), parts)
    if doubled < 0:
        raise Refused("The corners go clockwise. List them the other way round.")
    return (
        yield Line(
            "area",
            "area of the deck",
            "m²",
            doubled / 2,
            "twice / 2",
            {"twice": Part(doubled, "m²", "twice the area")},
        )
    )


@calculation
def side_length(
    along_m: Annotated[float, Given("how far it goes along", "m", 0, 100)],
    up_m: Annotated[float, Given("how far it goes up", "m", 0, 100)],
) -> Calculation:
    """Return the length of a side from how far it goes along and up (Pythagoras).

    length = (along² + up²) to the power ½.

    Args:
        along_m: how far it goes along, 0–100 m.
        up_m: how far it goes up, 0–100 m.

    Raises:
        OutOfRange: an argument outside its range.
    """
    return (
        yield Line(
            "length",
            "length of the side",
            "m",
            (along_m**2 + up_m**2) ** 0.5,
            "(along ** 2 + up ** 2) ** 0.5",
            {"along": Part(along_m, "m", "along"), "up": Part(up_m, "m", "up")},
        )
    )


@calculation
def area_left(
    area_m2: Annotated[float, Given("area of the deck", "m²", 0.1, 1000)],
    openings_m2: Annotated[tuple[float, ...], Given("opening", "m²", 0.0001, 40)],
) -> Calculation:
    """Return the square metres to laminate: the deck less its openings.

    openings = their sum; left = area − openings.

    Args:
        area_m2: area inside the edges, 0.1–1000 m².
        openings_m2: each opening, 0.0001–40 m².

    Raises:
        OutOfRange: an argument outside its range.
        Refused: the openings take up the whole deck.
    """
    parts = {f"opening_{n}": Part(m2, "m²", f"opening {n}") for n, m2 in enumerate(openings_m2, 1)}
    openings = yield Line(
        "openings", "all openings", "m²", sum(openings_m2), " + ".join(parts), parts
    )
    if openings >= area_m2:
        raise Refused("The openings take up the whole deck. Look at their sizes again.")
    return (
        yield Line(
            "left",
            "area to laminate",
            "m²",
            area_m2 - openings,
            "area - openings",
            {"area": Part(area_m2, "m²", "deck"), "openings": Part(openings, "m²", "openings")},
        )
    )
