"""Competencies that were used on a job, and who confirmed it.

Revision: 0006
Follows: 0005
"""

import sqlalchemy as sa
from alembic import op

revision = "0006"
down_revision = "0005"
branch_labels = None
depends_on = None

INSTANT = sa.DateTime(timezone=True)


def upgrade() -> None:
    op.create_table(
        "job_use",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("person_id", sa.Integer(), nullable=False),
        sa.Column("competency", sa.String(), nullable=False),
        sa.Column("roof", sa.String(), nullable=False),
        sa.Column("used_on", sa.Date(), nullable=False),
        sa.Column("noted_at", INSTANT, nullable=False),
        sa.Column("answer", sa.String(), nullable=False),
        sa.Column("answered_by", sa.Integer(), nullable=True),
        sa.Column("answered_at", INSTANT, nullable=True),
        sa.CheckConstraint("answer IN ('', 'confirmed', 'not confirmed')", name="answer"),
        sa.ForeignKeyConstraint(["person_id"], ["person.id"], name="fk_job_use_person_id_person"),
        sa.ForeignKeyConstraint(
            ["answered_by"], ["person.id"], name="fk_job_use_answered_by_person"
        ),
        sa.PrimaryKeyConstraint("id", name="pk_job_use"),
        sa.UniqueConstraint(
            "person_id",
            "competency",
            "used_on",
            "roof",
            name="uq_job_use_person_id_competency_used_on_roof",
        ),
    )


def downgrade() -> None:
    op.drop_table("job_use")
