"""What an invented person answers: rightly, or as somebody does who isn't sure yet."""

from trainer.lessons import (
    ChooseDrawn,
    Drawn,
    LocateDrawn,
    Mark,
    OrderDrawn,
    Typed,
    Variant,
    mark_answers,
    mark_choice,
    mark_order,
    mark_place,
)

#: What a wrong figure is a multiple of.
_OFF = 1.37


def answered(drawn: Drawn, *, right: bool) -> Mark:
    """Return the mark of a right or a wrong answer to a question of any kind."""
    match drawn:
        case Variant():
            return _worked(drawn, 1.0 if right else _OFF)
        case ChooseDrawn():
            wrong = next(place for place, _ in drawn.choices() if place != drawn.right_place())
            return mark_choice(drawn, drawn.right_place() if right else wrong)
        case OrderDrawn():
            # As it is shown it is never in order.
            return mark_order(drawn, drawn.right_places() if right else drawn.places)
        case LocateDrawn():
            meant = drawn.question.right_name
            wrong = next(each.name for each in drawn.question.regions if each.name != meant)
            return mark_place(drawn, meant if right else wrong)
    raise TypeError(f"Nobody knows how to answer {drawn!r}.")


def _worked(drawn: Variant, factor: float) -> Mark:
    figures = drawn.working().figures
    typed = {
        ask.line: Typed(f"{ask.in_asked_unit(figures[ask.line]) * factor:.6f}", ask.unit)
        for ask in drawn.asks
    }
    return mark_answers(drawn, typed, try_no=1)
