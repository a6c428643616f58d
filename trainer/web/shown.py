"""What was shown with a question: it travels in the form, signed, and marking rests on it alone."""

from dataclasses import asdict, dataclass

from flask import current_app
from itsdangerous import BadData, URLSafeSerializer

from trainer.lessons import ALL_YOURS


@dataclass(frozen=True, slots=True)
class Shown:
    """Everything needed to make the question again just as somebody saw it."""

    person_id: int
    question_id: str
    #: How often they had finished the question before.
    count: int
    try_no: int
    seed: str
    redraws: int
    #: The digest of the text that the question stands in.
    digest: str
    #: The digest of the roof's description, where it is asked on a roof.
    roof: str = ""
    #: The one line that a second try asks for.
    only: str | None = None
    #: Whether the lines that a second try doesn't ask for were right.
    rest_right: bool = True
    #: Whether these numbers, and their working, had been seen before.
    seen: bool = False
    #: The key of the numbers; sizes to buy in, which a roof's figures lean on, may change.
    variant: str = ""
    #: How much of its working is shown; see lessons/fading.py.
    stage: int = ALL_YOURS

    def sealed(self) -> str:
        """Return it as signed text for a form."""
        return _sealer().dumps(asdict(self))


def opened(text: str) -> Shown | None:
    """Return what a form carried, or None where it isn't ours or was changed."""
    try:
        return Shown(**_sealer().loads(text))
    except (BadData, TypeError):
        return None


def _sealer() -> URLSafeSerializer:
    return URLSafeSerializer(current_app.secret_key or "", salt="shown")
