-- Invitations a manager hands to somebody: the secret as a hash only, used once, gone with the person who made it.
CREATE TABLE invitations (
  id TEXT PRIMARY KEY,
  secret_hash TEXT NOT NULL UNIQUE,
  -- Name proposed to the one who is invited; '' = none.
  name TEXT NOT NULL,
  role TEXT NOT NULL CHECK (role IN ('viewer', 'crew', 'manager')),
  -- NULL = made with a token of a machine.
  made_by TEXT REFERENCES people (id) ON DELETE CASCADE,
  created_ms INTEGER NOT NULL,
  expires_ms INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
