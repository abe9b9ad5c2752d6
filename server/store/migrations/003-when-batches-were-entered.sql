-- When a batch was told to the program: a check that was overdue before that is nobody's fault and raises no alarm. NULL = with its opening.
ALTER TABLE batches ADD COLUMN entered_ms INTEGER;
