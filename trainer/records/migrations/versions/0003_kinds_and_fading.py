"""What kind of question was asked, and how much of its working was shown.

Revision: 0003
Follows: 0002
"""

import sqlalchemy as sa
from alembic import op

revision = "0003"
down_revision = "0002"
branch_labels = None
depends_on = None


def upgrade() -> None:
    # Every answer until now was to a sum, of which no working was shown. The defaults stay:
    # to take them away SQLite would copy the whole table.
    kind = sa.Column("kind", sa.String(), nullable=False, server_default="calculate")
    op.add_column("attempt", kind)
    op.add_column("attempt", sa.Column("stage", sa.Integer(), nullable=False, server_default="3"))


def downgrade() -> None:
    op.drop_column("attempt", "stage")
    op.drop_column("attempt", "kind")
