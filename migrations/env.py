"""How migrations reach the database: on the connection they are handed, in its one transaction."""

from alembic import context
from sqlmodel import SQLModel

from app.storage import tables  # noqa: F401 - tells SQLModel its tables
from app.storage.engine import open_database


def run(connection) -> None:
    context.configure(
        connection=connection,
        target_metadata=SQLModel.metadata,
        render_as_batch=True,
        transactional_ddl=True,
        transaction_per_migration=False,
    )
    with context.begin_transaction():
        context.run_migrations()


given = context.config.attributes.get("connection")
if given is not None:
    run(given)
else:
    # For `alembic -x database=FILE revision --autogenerate`.
    with open_database(context.get_x_argument(as_dictionary=True)["database"]).begin() as opened:
        run(opened)
