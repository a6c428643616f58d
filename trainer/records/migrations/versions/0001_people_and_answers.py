"""People, their sign-ins, and what they answered.

Revision: 0001
Follows: nothing
"""

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision = None
branch_labels = None
depends_on = None

INSTANT = sa.DateTime(timezone=True)


def upgrade() -> None:
    _add_people()
    _add_sign_ins()
    _add_answers()
    _add_totals()


def downgrade() -> None:
    for table in (
        "lesson_progress",
        "question_progress",
        "answer",
        "attempt",
        "source_text",
        "sign_in_delay",
        "sign_in",
        "person_role",
        "person",
        "crew",
    ):
        op.drop_table(table)


def _add_people() -> None:
    op.create_table(
        "crew",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("name", sa.String(), nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_crew"),
        sa.UniqueConstraint("name", name="uq_crew_name"),
    )
    op.create_table(
        "person",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("ref", sa.String(), nullable=False),
        sa.Column("name", sa.String(), nullable=False),
        sa.Column("sign_in_name", sa.String(), nullable=False),
        sa.Column("password_hash", sa.String(), nullable=False),
        sa.Column("crew_id", sa.Integer(), nullable=True),
        sa.Column("created_at", INSTANT, nullable=False),
        sa.Column("left_at", INSTANT, nullable=True),
        sa.ForeignKeyConstraint(["crew_id"], ["crew.id"], name="fk_person_crew_id_crew"),
        sa.PrimaryKeyConstraint("id", name="pk_person"),
        sa.UniqueConstraint("ref", name="uq_person_ref"),
        sa.UniqueConstraint("sign_in_name", name="uq_person_sign_in_name"),
    )
    op.create_index("ix_person_crew_id", "person", ["crew_id"])
    op.create_table(
        "person_role",
        sa.Column("person_id", sa.Integer(), nullable=False),
        sa.Column("role", sa.String(), nullable=False),
        sa.CheckConstraint(
            "role IN ('trainee', 'supervisor', 'office')", name=op.f("ck_person_role_role")
        ),
        sa.ForeignKeyConstraint(
            ["person_id"], ["person.id"], name="fk_person_role_person_id_person"
        ),
        sa.PrimaryKeyConstraint("person_id", "role", name="pk_person_role"),
    )


def _add_sign_ins() -> None:
    op.create_table(
        "sign_in",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("token_digest", sa.String(), nullable=False),
        sa.Column("person_id", sa.Integer(), nullable=False),
        sa.Column("created_at", INSTANT, nullable=False),
        sa.Column("last_seen_at", INSTANT, nullable=False),
        sa.Column("expires_at", INSTANT, nullable=False),
        sa.Column("ended_at", INSTANT, nullable=True),
        sa.Column("from_where", sa.String(), nullable=False),
        sa.ForeignKeyConstraint(["person_id"], ["person.id"], name="fk_sign_in_person_id_person"),
        sa.PrimaryKeyConstraint("id", name="pk_sign_in"),
        sa.UniqueConstraint("token_digest", name="uq_sign_in_token_digest"),
    )
    op.create_index("ix_sign_in_person_id", "sign_in", ["person_id"])
    op.create_table(
        "sign_in_delay",
        sa.Column("name_digest", sa.String(), nullable=False),
        sa.Column("failures", sa.Integer(), nullable=False),
        sa.Column("last_failed_at", INSTANT, nullable=False),
        sa.Column("free_at", INSTANT, nullable=False),
        sa.PrimaryKeyConstraint("name_digest", name="pk_sign_in_delay"),
    )
    op.create_index("ix_sign_in_delay_last_failed_at", "sign_in_delay", ["last_failed_at"])


def _add_answers() -> None:
    op.create_table(
        "source_text",
        sa.Column("digest", sa.String(), nullable=False),
        sa.Column("kind", sa.String(), nullable=False),
        sa.Column("name", sa.String(), nullable=False),
        sa.Column("text", sa.String(), nullable=False),
        sa.Column("first_kept_at", INSTANT, nullable=False),
        sa.CheckConstraint("kind IN ('lesson', 'roof')", name=op.f("ck_source_text_kind")),
        sa.PrimaryKeyConstraint("digest", name="pk_source_text"),
    )
    op.create_table(
        "attempt",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("person_id", sa.Integer(), nullable=False),
        sa.Column("question_id", sa.String(), nullable=False),
        sa.Column("lesson", sa.String(), nullable=False),
        sa.Column("competency", sa.String(), nullable=False),
        sa.Column("roof", sa.String(), nullable=False),
        sa.Column("count", sa.Integer(), nullable=False),
        sa.Column("try_no", sa.Integer(), nullable=False),
        sa.Column("seed", sa.String(), nullable=False),
        sa.Column("redraws", sa.Integer(), nullable=False),
        sa.Column("variant", sa.String(), nullable=False),
        sa.Column("source_digest", sa.String(), nullable=False),
        sa.Column("engine_version", sa.String(), nullable=False),
        sa.Column("givens", sa.JSON(), nullable=False),
        sa.Column("lines", sa.JSON(), nullable=False),
        sa.Column("sent_at", INSTANT, nullable=False),
        sa.Column("local_date", sa.Date(), nullable=False),
        sa.Column("sent_later", sa.Boolean(), nullable=False),
        sa.Column("working_shown", sa.Boolean(), nullable=False),
        sa.Column("started_afresh", sa.Boolean(), nullable=False),
        sa.Column("unaided", sa.Boolean(), nullable=False),
        sa.Column("right", sa.Boolean(), nullable=False),
        sa.Column("finished", sa.Boolean(), nullable=False),
        sa.CheckConstraint("count >= 0", name=op.f("ck_attempt_count")),
        sa.CheckConstraint("redraws >= 0", name=op.f("ck_attempt_redraws")),
        sa.CheckConstraint("try_no IN (1, 2)", name=op.f("ck_attempt_try_no")),
        sa.ForeignKeyConstraint(["person_id"], ["person.id"], name="fk_attempt_person_id_person"),
        sa.ForeignKeyConstraint(
            ["source_digest"], ["source_text.digest"], name="fk_attempt_source_digest_source_text"
        ),
        sa.PrimaryKeyConstraint("id", name="pk_attempt"),
        sa.UniqueConstraint(
            "person_id",
            "question_id",
            "roof",
            "count",
            "try_no",
            name="uq_attempt_person_id_question_id_roof_count_try_no",
        ),
    )
    op.create_table(
        "answer",
        sa.Column("attempt_id", sa.Integer(), nullable=False),
        sa.Column("position", sa.Integer(), nullable=False),
        sa.Column("line", sa.String(), nullable=False),
        sa.Column("skill", sa.String(), nullable=False),
        sa.Column("unit", sa.String(), nullable=False),
        sa.Column("tolerance", sa.String(), nullable=False),
        sa.Column("right_value", sa.Double(), nullable=True),
        sa.Column("expected_value", sa.Double(), nullable=True),
        sa.Column("typed", sa.String(), nullable=False),
        sa.Column("read_as", sa.String(), nullable=False),
        sa.Column("read_value", sa.Double(), nullable=True),
        sa.Column("verdict", sa.String(), nullable=False),
        sa.Column("slip", sa.String(), nullable=False),
        sa.Column("cue", sa.String(), nullable=False),
        sa.CheckConstraint(
            "verdict IN ('right', 'carried', 'wrong')", name=op.f("ck_answer_verdict")
        ),
        sa.ForeignKeyConstraint(
            ["attempt_id"], ["attempt.id"], name="fk_answer_attempt_id_attempt"
        ),
        sa.PrimaryKeyConstraint("attempt_id", "position", name="pk_answer"),
    )


def _add_totals() -> None:
    op.create_table(
        "question_progress",
        sa.Column("person_id", sa.Integer(), nullable=False),
        sa.Column("question_id", sa.String(), nullable=False),
        sa.Column("lesson", sa.String(), nullable=False),
        sa.Column("tried", sa.Integer(), nullable=False),
        sa.Column("right", sa.Integer(), nullable=False),
        sa.Column("finished", sa.Integer(), nullable=False),
        sa.Column("ever_right", sa.Boolean(), nullable=False),
        sa.Column("last_seen_at", INSTANT, nullable=False),
        sa.Column("last_date", sa.Date(), nullable=False),
        sa.ForeignKeyConstraint(
            ["person_id"], ["person.id"], name="fk_question_progress_person_id_person"
        ),
        sa.PrimaryKeyConstraint("person_id", "question_id", name="pk_question_progress"),
    )
    op.create_table(
        "lesson_progress",
        sa.Column("person_id", sa.Integer(), nullable=False),
        sa.Column("lesson", sa.String(), nullable=False),
        sa.Column("read_at", INSTANT, nullable=True),
        sa.Column("read_date", sa.Date(), nullable=True),
        sa.Column("tried", sa.Integer(), nullable=False),
        sa.Column("right", sa.Integer(), nullable=False),
        sa.Column("last_seen_at", INSTANT, nullable=False),
        sa.Column("last_date", sa.Date(), nullable=False),
        sa.ForeignKeyConstraint(
            ["person_id"], ["person.id"], name="fk_lesson_progress_person_id_person"
        ),
        sa.PrimaryKeyConstraint("person_id", "lesson", name="pk_lesson_progress"),
    )
