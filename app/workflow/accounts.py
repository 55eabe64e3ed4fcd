"""Accounts: made, changed, signed in to. Passwords are hashed by Argon2id and never kept."""

from dataclasses import dataclass
from datetime import datetime

from pwdlib import PasswordHash
from pwdlib.hashers.argon2 import Argon2Hasher

from app.panel.faults import Fault, Refused
from app.panel.wording import one_of, quoted
from app.storage import Session, accounts, audit
from app.storage.accounts import ROLES, Role, StoredAccount, StoredSignIn

SHORTEST, LONGEST = 10, 200
"""Characters of a password (NIST SP 800-63B asks for 8 at least, and for no other rules; from memory)."""

LONGEST_NAME = 40

HASHING = PasswordHash((Argon2Hasher(memory_cost=19_456, time_cost=2, parallelism=1),))
"""Argon2id with 19 MiB, two passes, one lane."""

NOBODY = HASHING.hash("nobody has this password")
"""Compared with where there is no account, so that a wrong name takes as long as a wrong password."""


@dataclass(frozen=True, slots=True)
class SignedIn:
    account: StoredAccount
    token: str


def add(session: Session, name: str, role: str, password: str, *, by: str, now: datetime) -> StoredAccount:
    """A new account; raises Refused with everything that is wrong."""
    faults = [*_name_faults(session, name), *_role_faults(role), *_password_faults(password)]
    if faults:
        raise Refused(faults)
    made = accounts.insert(session, name, _role(role), HASHING.hash(password), now)
    audit.note(session, by, f"account made, {role}", name, now)
    return made


def change_role(session: Session, name: str, role: str, *, by: str, now: datetime) -> None:
    """Raises Refused for an unknown name or role, and for the last owner."""
    account = _named(session, name)
    if faults := _role_faults(role):
        raise Refused(faults)
    if role != "owner":
        _refuse_last_owner(session, account)
    accounts.set_role(session, account.id, _role(role))
    audit.note(session, by, f"role {account.role} to {role}", account.name, now)


def disable(session: Session, name: str, *, by: str, now: datetime) -> None:
    """Ends its sessions too; raises Refused for an unknown name and for the last owner."""
    account = _named(session, name)
    _refuse_last_owner(session, account)
    accounts.disable(session, account.id, now)
    audit.note(session, by, "account disabled", account.name, now)


def whose(session: Session, name: str, password: str) -> StoredAccount | None:
    """The account that name and password belong to, else None; nothing says which was wrong. It takes its time."""
    account = accounts.named(session, name)
    is_right = HASHING.verify(password[:LONGEST], account.password_hash if account else NOBODY)
    return account if account and is_right and not account.disabled_at else None


def sign_in(session: Session, account: StoredAccount | None, name: str, device: str, now: datetime) -> SignedIn | None:
    """A new session for the account that `whose` found, and a line in the log whether or not it found one."""
    if account is None or accounts.find(session, account.id).disabled_at:
        audit.note(session, name[:LONGEST_NAME] or "nobody", "sign-in refused", device, now)
        return None
    audit.note(session, account.name, "signed in", device, now)
    return SignedIn(account, accounts.begin_session(session, account.id, device, now))


def change_password(
    session: Session, account: StoredAccount, here: StoredSignIn, old: str, new: str, now: datetime
) -> None:
    """Ends every other session; raises Refused for a wrong old password and a new one that is none."""
    faults = _password_faults(new)
    if not HASHING.verify(old[:LONGEST], account.password_hash):
        faults.insert(0, Fault("old password", "another", "the password of this account"))
    if faults:
        raise Refused(faults)
    accounts.set_password(session, account.id, HASHING.hash(new))
    accounts.end_sessions(session, account.id, now, but=here.id)
    audit.note(session, account.name, "password changed, other sessions ended", account.name, now)


def reset_password(session: Session, name: str, password: str, *, by: str, now: datetime) -> None:
    """For who has forgotten it; ends all sessions. Raises Refused."""
    account = _named(session, name)
    if faults := _password_faults(password):
        raise Refused(faults)
    accounts.set_password(session, account.id, HASHING.hash(password))
    accounts.end_sessions(session, account.id, now)
    audit.note(session, by, "password set, sessions ended", account.name, now)


def _name_faults(session: Session, name: str) -> list[Fault]:
    if not (1 <= len(name) <= LONGEST_NAME and name.isprintable() and name == name.strip()):
        return [Fault("NAME", quoted(name), f"1 to {LONGEST_NAME} characters that print")]
    if accounts.named(session, name):
        return [Fault("NAME", quoted(name), "a name that no other account has")]
    return []


def _role_faults(role: str) -> list[Fault]:
    return [] if role in ROLES else [Fault("ROLE", quoted(role), one_of(ROLES, role))]


def _password_faults(password: str) -> list[Fault]:
    if SHORTEST <= len(password) <= LONGEST:
        return []
    return [Fault("password", f"{len(password)} characters", f"{SHORTEST} to {LONGEST} characters")]


def _role(role: str) -> Role:
    return next(known for known in ROLES if known == role)


def _named(session: Session, name: str) -> StoredAccount:
    account = accounts.named(session, name)
    if account is None:
        names = [one.name for one in accounts.every(session)]
        raise Refused([Fault("NAME", quoted(name), one_of(names, name) if names else "a name; there is no account")])
    return account


def _refuse_last_owner(session: Session, account: StoredAccount) -> None:
    owners = [one for one in accounts.every(session) if one.role == "owner" and not one.disabled_at]
    if [one.id for one in owners] == [account.id]:
        raise Refused([Fault("NAME", quoted(account.name), "another than the last owner, who must stay one")])
