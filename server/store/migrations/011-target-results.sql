-- What became of the last message to each way alerts can go, whatever it was: an alarm, a test. A phone that is gone, or subscribed anew, starts afresh.
CREATE TABLE target_results (
  target_id TEXT PRIMARY KEY,
  delivered INTEGER NOT NULL CHECK (delivered IN (0, 1)),
  text TEXT NOT NULL,
  at_ms INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
CREATE TRIGGER phone_gone AFTER DELETE ON phones BEGIN
  DELETE FROM target_results WHERE target_id = OLD.id;
END;
CREATE TRIGGER phone_anew AFTER UPDATE OF p256dh ON phones WHEN OLD.p256dh <> NEW.p256dh BEGIN
  DELETE FROM target_results WHERE target_id = NEW.id;
END;
