"""The people in these tests, and the password that opens the door to each of them."""

from dataclasses import dataclass
from datetime import UTC, datetime

PASSWORD = "a bucket of warm resin"
NOW = datetime(2026, 3, 9, 7, 45, tzinfo=UTC)
"""A Monday morning, when every test begins."""


@dataclass(frozen=True)
class Who:
    """Somebody who signs in: their name, what they may be here, and whose crew they are in."""

    name: str
    role: str
    crew: str = ""

    @property
    def sign_in_name(self) -> str:
        """The name that is typed to sign in."""
        return self.name.casefold()


NOOR = Who("Noor", "trainee", "Alder")
"""The one who learns: most pages are seen through her eyes."""

SAM = Who("Sam", "trainee", "Alder")
"""Another trainee of her crew: nothing of hers may show on his pages."""

BERTIL = Who("Bertil", "supervisor", "Alder")
"""Her supervisor: sees the crew, and answers questions himself."""

RUTH = Who("Ruth", "supervisor", "Birch")
"""The other crew's supervisor: has the role, and still may not see Noor."""

ODA = Who("Oda", "trainee", "Birch")
"""Ruth's trainee: somebody of another crew, for Bertil to be kept from."""

KIT = Who("Kit", "office")
"""Of the office: in no crew, and sees all of them."""

EVERYBODY = (NOOR, SAM, BERTIL, RUTH, ODA, KIT)
CREWS = ("Alder", "Birch")
