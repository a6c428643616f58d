"""The season's start, as the office sets it.

Revision: 0007
Follows: 0006
"""

import sqlalchemy as sa
from alembic import op

revision = "0007"
down_revision = "0006"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "season",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("starts", sa.Date(), nullable=False),
        sa.Column("set_by", sa.Integer(), nullable=False),
        sa.Column("set_at", sa.DateTime(timezone=True), nullable=False),
        sa.ForeignKeyConstraint(["set_by"], ["person.id"], name="fk_season_set_by_person"),
        sa.PrimaryKeyConstraint("id", name="pk_season"),
    )


def downgrade() -> None:
    op.drop_table("season")
