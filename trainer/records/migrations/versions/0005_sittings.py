"""Sittings of practice and of the refresher, turn by turn.

Revision: 0005
Follows: 0004
"""

import sqlalchemy as sa
from alembic import op

revision = "0005"
down_revision = "0004"
branch_labels = None
depends_on = None

INSTANT = sa.DateTime(timezone=True)


def upgrade() -> None:
    op.create_table(
        "sitting",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("person_id", sa.Integer(), nullable=False),
        sa.Column("kind", sa.String(), nullable=False),
        sa.Column("season_id", sa.Integer(), nullable=False),
        sa.Column("number", sa.Integer(), nullable=False),
        sa.Column("local_date", sa.Date(), nullable=False),
        sa.Column("had", sa.Integer(), nullable=True),
        sa.Column("held", sa.Integer(), nullable=True),
        sa.Column("begun_at", INSTANT, nullable=False),
        sa.Column("ended_at", INSTANT, nullable=True),
        sa.CheckConstraint("kind IN ('practice', 'refresher')", name="kind"),
        sa.ForeignKeyConstraint(["person_id"], ["person.id"], name="fk_sitting_person_id_person"),
        sa.PrimaryKeyConstraint("id", name="pk_sitting"),
        sa.UniqueConstraint(
            "person_id",
            "kind",
            "local_date",
            "season_id",
            "number",
            name="uq_sitting_person_id_kind_local_date_season_id_number",
        ),
    )
    op.create_table(
        "sitting_turn",
        sa.Column("sitting_id", sa.Integer(), nullable=False),
        sa.Column("position", sa.Integer(), nullable=False),
        sa.Column("question_id", sa.String(), nullable=False),
        sa.Column("skill", sa.String(), nullable=False),
        sa.Column("stood", sa.String(), nullable=False),
        sa.Column("predicted", sa.Double(), nullable=True),
        sa.Column("count", sa.Integer(), nullable=True),
        sa.Column("right", sa.Boolean(), nullable=True),
        sa.Column("unaided", sa.Boolean(), nullable=True),
        sa.Column("answered_at", INSTANT, nullable=True),
        sa.ForeignKeyConstraint(
            ["sitting_id"], ["sitting.id"], name="fk_sitting_turn_sitting_id_sitting"
        ),
        sa.PrimaryKeyConstraint("sitting_id", "position", name="pk_sitting_turn"),
    )


def downgrade() -> None:
    op.drop_table("sitting_turn")
    op.drop_table("sitting")
