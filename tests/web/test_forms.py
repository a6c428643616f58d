"""Forms keep what was typed, and say in a sentence what they can't read."""

import pytest
from web_bench import Bench
from werkzeug.datastructures import MultiDict

from trainer.lessons import CalculateQuestion, Typed, Variant
from trainer.web.forms import SignInForm
from trainer.web.kinds.calculate import CalculateForm


@pytest.fixture
def chain(tiny: Bench) -> Variant:
    """Grams of catalyst, and its millilitres."""
    question = tiny.library.questions["dose-chain"]
    assert isinstance(question, CalculateQuestion)
    return question.drawn("5eed")


def filled(chain: Variant, only: str | None = None, **fields: str) -> CalculateForm:
    """Return the form with this in it."""
    return CalculateForm(chain, only, MultiDict(fields))


def test_there_is_a_field_for_each_asked_line(chain: Variant) -> None:
    """And one for the unit beside it."""
    names = [field.name for field in CalculateForm(chain)]
    assert names == ["answer_0", "answer_0_unit", "answer_1", "answer_1_unit"]


def test_what_is_typed_goes_by_its_line(chain: Variant) -> None:
    """As it was typed, with the unit picked beside it, or none."""
    form = filled(chain, answer_0=" 40 ", answer_0_unit="kg", answer_1="32 ml")
    assert form.typed() == {"mass": Typed(" 40 ", "kg"), "volume": Typed("32 ml", None)}


def test_nothing_sent_is_nothing_typed(chain: Variant) -> None:
    """A field that isn't there is an empty one."""
    assert filled(chain).typed() == {"mass": Typed(""), "volume": Typed("")}


def test_figures_are_let_through(chain: Variant) -> None:
    """With and without a unit, in any unit of the kind."""
    assert filled(chain, answer_0="0.04 kg", answer_1="32", answer_1_unit="ml").validate()


def test_each_field_has_its_own_sentence(chain: Variant) -> None:
    """The first can be read; the second is asked about."""
    form = filled(chain, answer_0="40", answer_1="1,300")
    assert not form.validate()
    assert form.errors == {
        "answer_1": ["Is that 1.300 or 1300? Write it one of those ways."],
    }


def test_a_unit_of_another_kind_is_asked_about(chain: Variant) -> None:
    """Millilitres where grams are asked are kept and not marked."""
    form = filled(chain, answer_0="40 ml", answer_1="32")
    assert not form.validate()
    assert list(form.errors) == ["answer_0"]
    assert form["answer_0"].data == "40 ml"


def test_a_unit_nobody_knows_is_asked_about(chain: Variant) -> None:
    """Whatever is sent beside the field, there is a sentence for it."""
    form = filled(chain, answer_0="40", answer_0_unit="parsecs", answer_1="32")
    assert not form.validate()
    assert str(form["answer_0"].errors[0]).startswith("There is no unit 'parsecs'.")


def test_fields_that_were_not_asked_are_left_alone(chain: Variant) -> None:
    """A form for one line knows no second."""
    form = filled(chain, "mass", answer_0="40", answer_1="nonsense")
    assert form.validate()
    assert form.typed() == {"mass": Typed("40")}


def test_signing_in_wants_both() -> None:
    """A name and a password, each with its sentence."""
    form = SignInForm(MultiDict({"name": "", "password": ""}))
    assert not form.validate()
    assert form.errors == {
        "name": ["Type your sign-in name."],
        "password": ["Type your password."],
    }
    assert SignInForm(MultiDict({"name": "noor", "password": "x"})).validate()
