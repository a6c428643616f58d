"""An answer that was acknowledged is never lost, whatever is killed."""

import signal
from pathlib import Path

import pytest
from records_app import begin_script, opened
from records_cast import TRY, People
from sqlalchemy import text

from trainer.records.attempts import attempt_at
from trainer.records.database import AnySession, db
from trainer.records.progress import question_row

# Records one answer after another; each is acknowledged by a line once it is committed.
SENDER = """
import sys
from dataclasses import replace
sys.path.insert(0, sys.argv[3])
from records_app import make_app
from records_cast import TRY, record
from trainer.records.database import db, writing
app = make_app(sys.argv[1])
with app.app_context():
    for count in range(100_000):
        writing(db.session)
        record(db.session, replace(TRY, person_id=int(sys.argv[2]), count=count))
        db.session.commit()
        print(count, flush=True)
"""


@pytest.mark.usefixtures("app")
@pytest.mark.parametrize("acknowledged", [1, 25])
def test_a_killed_process_loses_nothing_it_acknowledged(
    session: AnySession, people: People, tmp_path: Path, acknowledged: int
) -> None:
    """Every count that was read from it before the kill is in the database, with its totals."""
    url = db.engine.url.render_as_string()
    session.commit()
    sender = begin_script(SENDER, tmp_path, url, str(people.mina), str(Path(__file__).parent))
    assert sender.stdout is not None
    last = [int(sender.stdout.readline()) for _ in range(acknowledged)][-1]
    sender.send_signal(signal.SIGKILL)
    sender.communicate(timeout=30)
    assert last == acknowledged - 1
    with opened(url):
        assert db.session.scalar(text("PRAGMA integrity_check")) == "ok"
        for count in range(acknowledged):
            stored = attempt_at(db.session, people.mina, TRY.question_id, count=count, try_no=1)
            assert stored is not None
            assert stored.answers == TRY.answers
        totals = question_row(db.session, people.mina, TRY.question_id)
        kept = db.session.scalar(text("SELECT count(*) FROM attempt"))
        assert totals is not None
        assert totals.tried == kept >= acknowledged
