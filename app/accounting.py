"""Accounts by command, on the server's own machine: made, changed, disabled, listed."""

import argparse
import getpass
import sys
from collections.abc import Callable
from datetime import UTC, datetime
from typing import TypeVar

from app.troubles import Trouble, database_of, faults_named, storage_named

HERE = "this machine"
"""Who did it, in the log of who did what."""

Parser = TypeVar("Parser", bound=argparse.ArgumentParser)
Result = TypeVar("Result")


def add_user_commands(commands: "argparse._SubParsersAction[Parser]", add_data: Callable[[Parser], None]) -> None:
    """`user add | role | password | disable | list`; a password is read, never an argument."""
    user = commands.add_parser("user", help="accounts of a server that other machines reach")
    acts = user.add_subparsers(required=True, metavar="ACT")
    add = acts.add_parser("add", help="a new account; its password is read from the terminal or standard input")
    add.add_argument("name", metavar="NAME")
    add.add_argument("--role", required=True, help="owner, detailer, manager, foreman or viewer")
    role = acts.add_parser("role", help="another role for an account")
    role.add_argument("name", metavar="NAME")
    role.add_argument("role", metavar="ROLE")
    password = acts.add_parser("password", help="another password for an account; its sessions end")
    password.add_argument("name", metavar="NAME")
    disable = acts.add_parser("disable", help="nobody signs in with it any more")
    disable.add_argument("name", metavar="NAME")
    listed = acts.add_parser("list", help="all accounts")
    for parser, run in ((add, _add), (role, _role), (password, _password), (disable, _disable), (listed, _list)):
        add_data(parser)
        parser.set_defaults(run=run)


def _add(arguments: argparse.Namespace) -> None:
    from app.workflow.accounts import add

    words = _read_password()
    _act(arguments, lambda session, now: add(session, arguments.name, arguments.role, words, by=HERE, now=now))
    print(f"{arguments.name} is {arguments.role}")


def _role(arguments: argparse.Namespace) -> None:
    from app.workflow.accounts import change_role

    _act(arguments, lambda session, now: change_role(session, arguments.name, arguments.role, by=HERE, now=now))
    print(f"{arguments.name} is {arguments.role}")


def _password(arguments: argparse.Namespace) -> None:
    from app.workflow.accounts import reset_password

    words = _read_password()
    _act(arguments, lambda session, now: reset_password(session, arguments.name, words, by=HERE, now=now))
    print(f"{arguments.name} has another password; all sessions have ended")


def _disable(arguments: argparse.Namespace) -> None:
    from app.workflow.accounts import disable

    _act(arguments, lambda session, now: disable(session, arguments.name, by=HERE, now=now))
    print(f"{arguments.name} is disabled")


def _list(arguments: argparse.Namespace) -> None:
    from app.storage import accounts

    for one in _act(arguments, lambda session, _: accounts.every(session)):
        print("\t".join((one.name, one.role, *(("disabled",) if one.disabled_at else ()))))


def _act(arguments: argparse.Namespace, act: Callable[..., Result]) -> Result:
    from app.workflow.exchange import with_accounts

    with faults_named("user"), storage_named():
        return with_accounts(database_of(arguments), lambda session: act(session, datetime.now(UTC)))


def _read_password() -> str:
    """From the terminal, twice; from standard input, one line, where that is no terminal."""
    if not sys.stdin.isatty():
        return sys.stdin.readline().rstrip("\n")
    first = getpass.getpass("Password: ")
    if getpass.getpass("Once more: ") != first:
        raise Trouble("password: found two that differ, expected the same twice")
    return first
