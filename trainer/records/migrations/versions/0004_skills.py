"""How far everybody is with each skill, and where to begin when their tries are gone.

Revision: 0004
Follows: 0003
"""

import sqlalchemy as sa
from alembic import op

revision = "0004"
down_revision = "0003"
branch_labels = None
depends_on = None

_REACHED = "reached IN ('started', 'gelled', 'set', 'cured')"
_COUNTS = (
    *("stage", "wrong_running", "right_alone"),
    *("in_a_row", "runs", "counted", "wrong", "numberless", "counted_days", "right_days", "owed"),
    "day_tries",
)
_CLAIMS = ("slipped", "day_open", "day_counted", "day_right")


def upgrade() -> None:
    # The rows come from the tries, which are many and judged by the lessons' rules: see
    # `trainer rebuild`, and the start that brings the tables.
    for name in ("skill_progress", "skill_start"):
        op.create_table(
            name,
            sa.Column("person_id", sa.Integer(), nullable=False),
            sa.Column("skill", sa.String(), nullable=False),
            sa.Column("reached", sa.String(), nullable=False),
            *(sa.Column(count, sa.Integer(), nullable=False) for count in _COUNTS),
            *(sa.Column(claim, sa.Boolean(), nullable=False) for claim in _CLAIMS),
            sa.Column("met_on", sa.Date(), nullable=True),
            sa.Column("day", sa.Date(), nullable=True),
            sa.Column("due", sa.Date(), nullable=True),
            sa.Column("model", sa.String(), nullable=False),
            sa.Column("stability", sa.Double(), nullable=True),
            sa.Column("difficulty", sa.Double(), nullable=True),
            sa.Column("heard", sa.Date(), nullable=True),
            sa.Column("review_due", sa.Date(), nullable=True),
            sa.CheckConstraint(_REACHED, name="reached"),
            sa.ForeignKeyConstraint(
                ["person_id"], ["person.id"], name=f"fk_{name}_person_id_person"
            ),
            sa.PrimaryKeyConstraint("person_id", "skill", name=f"pk_{name}"),
        )


def downgrade() -> None:
    op.drop_table("skill_start")
    op.drop_table("skill_progress")
