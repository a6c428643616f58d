"""Stock lengths: the fewest that could do, and what is left over of those that are bought."""

from typing import Annotated

from trainer.engine.conversions import rounded_up, whole_mm
from trainer.engine.errors import Refused
from trainer.engine.lengths import joined
from trainer.engine.schema import Given
from trainer.engine.units import show
from trainer.engine.working import Calculation, Line, Part, calculation

Pieces = Annotated[tuple[float, ...], Given("piece", "m", 0.01, 12)]
StockLength = Annotated[float, Given("length as sold", "m", 0.5, 12)]


def _all_pieces(pieces_m: tuple[float, ...], stock_m: float) -> Line:
    if whole_mm(max(pieces_m)) > whole_mm(stock_m):
        piece, stock = show(max(pieces_m), "m"), show(stock_m, "m")
        raise Refused(f"A piece of {piece} is longer than the {stock} sold: make it of two.")
    return joined("total", "all pieces end to end", "piece", pieces_m)


@calculation
def stock_bound(pieces_m: Pieces, stock_m: StockLength) -> Calculation:
    """Return the fewest lengths that could do, from the pieces put end to end.

    lengths = total ÷ length as sold, in whole millimetres, rounded up. It counts material alone:
    the pieces may need more lengths, never fewer.

    Args:
        pieces_m: each piece to cut, 0.01–12 m.
        stock_m: a length as it is sold, 0.5–12 m.

    Raises:
        OutOfRange: an argument outside its range.
        Refused: a piece is longer than a length as sold.
    """
    total = yield _all_pieces(pieces_m, stock_m)
    total_mm, stock_mm = whole_mm(total), whole_mm(stock_m)
    return (
        yield Line(
            "lengths",
            "fewest lengths that could do",
            "lengths",
            rounded_up(total_mm, stock_mm),
            "ceil(total / stock)",
            {
                "total": Part(total_mm, "mm", "all pieces end to end"),
                "stock": Part(stock_mm, "mm", "length as sold"),
            },
        )
    )


@calculation
def waste_percent(
    pieces_m: Pieces,
    stock_m: StockLength,
    lengths: Annotated[int, Given("lengths bought", "", 1, 500)],
) -> Calculation:
    """Return the percentage of the lengths bought that is left over.

    bought = lengths × length as sold; waste = (bought − total) ÷ bought × 100, in whole
    millimetres.

    Args:
        pieces_m: each piece to cut, 0.01–12 m.
        stock_m: a length as it is sold, 0.5–12 m.
        lengths: how many are bought, 1–500.

    Raises:
        OutOfRange: an argument outside its range.
        Refused: a piece is longer than a length as sold, or too few lengths are bought.
    """
    total = yield _all_pieces(pieces_m, stock_m)
    bought = yield Line(
        "bought",
        "all lengths bought",
        "m",
        lengths * stock_m,
        "lengths * stock",
        {"lengths": Part(lengths, "", "lengths"), "stock": Part(stock_m, "m", "length as sold")},
    )
    total_mm, bought_mm = whole_mm(total), whole_mm(bought)
    if bought_mm < total_mm:
        raise Refused("The pieces are longer together than all lengths bought: buy more lengths.")
    return (
        yield Line(
            "waste",
            "left over",
            "%",
            (bought_mm - total_mm) / bought_mm * 100,
            "(bought - total) / bought * 100",
            {
                "bought": Part(bought_mm, "mm", "all lengths bought"),
                "total": Part(total_mm, "mm", "all pieces end to end"),
            },
        )
    )
