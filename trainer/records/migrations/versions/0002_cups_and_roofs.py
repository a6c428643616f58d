"""Test cups, and roofs that were described.

Revision: 0002
Follows: 0001
"""

import sqlalchemy as sa
from alembic import op

revision = "0002"
down_revision = "0001"
branch_labels = None
depends_on = None

INSTANT = sa.DateTime(timezone=True)


def upgrade() -> None:
    op.create_table(
        "test_cup",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("person_id", sa.Integer(), nullable=False),
        sa.Column("product", sa.String(), nullable=False),
        sa.Column("minutes", sa.Double(), nullable=False),
        sa.Column("at_c", sa.Double(), nullable=False),
        sa.Column("percent", sa.Double(), nullable=False),
        sa.Column("dose", sa.Double(), nullable=False),
        sa.Column("convention", sa.String(), nullable=False),
        sa.Column("from_batch", sa.Boolean(), nullable=False),
        sa.Column("noted_at", INSTANT, nullable=False),
        sa.Column("local_date", sa.Date(), nullable=False),
        sa.ForeignKeyConstraint(["person_id"], ["person.id"], name="fk_test_cup_person_id_person"),
        sa.PrimaryKeyConstraint("id", name="pk_test_cup"),
    )
    op.create_index("ix_test_cup_person_id", "test_cup", ["person_id"])
    op.create_table(
        "roof",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("person_id", sa.Integer(), nullable=False),
        sa.Column("title", sa.String(), nullable=False),
        sa.Column("digest", sa.String(), nullable=False),
        sa.Column("created_at", INSTANT, nullable=False),
        sa.Column("changed_at", INSTANT, nullable=False),
        sa.Column("local_date", sa.Date(), nullable=False),
        sa.ForeignKeyConstraint(["person_id"], ["person.id"], name="fk_roof_person_id_person"),
        sa.ForeignKeyConstraint(
            ["digest"], ["source_text.digest"], name="fk_roof_digest_source_text"
        ),
        sa.PrimaryKeyConstraint("id", name="pk_roof"),
    )
    op.create_index("ix_roof_person_id", "roof", ["person_id"])


def downgrade() -> None:
    op.drop_table("roof")
    op.drop_table("test_cup")
