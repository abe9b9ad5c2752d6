-- What a line of the log is about beside what the person wrote, JSON as `LogAbout` in shared/healing/batch-log.ts; NULL = nothing but the note.
-- Until now answers, moves and corrections were English sentences in the note. A note that is exactly such a sentence becomes data; any other stays.
ALTER TABLE log_entries ADD COLUMN about TEXT;

UPDATE log_entries SET about = json_object('stage', note), note = ''
WHERE kind = 'moved-on' AND note IN ('loading', 'closed', 'venting', 'hardening');

-- "<question> yes", "<question> no: <what was added>", with the questions of the version that the batch has pinned. Which occasion it was is not
-- known. Where several checks ask the same, the first of the plan stands for them; where a note can be cut in two ways, it stays.
WITH fitting AS (
  SELECT log.id, log.note, check_plan.key AS place, check_plan.value ->> '$.id' AS check_id, given.answer,
    (check_plan.value ->> '$.question') || ' ' || given.answer AS said
  FROM log_entries log
  JOIN batches ON batches.id = log.batch_id
  JOIN profile_versions plan ON plan.profile_id = batches.profile_id AND plan.version = batches.profile_version
  JOIN json_each(plan.document, '$.checks') check_plan
  JOIN (SELECT 'yes' AS answer UNION ALL SELECT 'no') given
  WHERE log.kind = 'check' AND (log.note = said
    OR (substr(log.note, 1, length(said) + 2) = said || ': ' AND length(log.note) > length(said) + 2))
), answered AS (
  SELECT id, min(place), check_id, answer, substr(note, length(said) + 3) AS added
  FROM fitting GROUP BY id HAVING count(DISTINCT said) = 1
)
UPDATE log_entries SET note = answered.added,
  about = json_object('check', json_object('id', answered.check_id, 'checkId', NULL, 'answer', answered.answer))
FROM answered WHERE answered.id = log_entries.id;

-- "scion: (empty) → A; plants: 1000 → 980": every part must be a field with one arrow in it, and a number where the field is one.
WITH part AS (
  SELECT log.id, one.key AS place, substr(one.value, 1, instr(one.value, ': ') - 1) AS label,
    substr(one.value, instr(one.value, ': ') + 2) AS course
  FROM log_entries log
  JOIN json_each('[' || replace(json_quote(log.note), '; ', '","') || ']') one
  WHERE log.kind = 'corrected'
), value AS (
  SELECT id, place, CASE label WHEN 'closed' THEN 'closedAt' ELSE label END AS field,
    substr(course, 1, instr(course, ' → ') - 1) AS before, substr(course, instr(course, ' → ') + 3) AS after,
    instr(course, ' → ') = 0 AS is_cut
  FROM part
), change AS (
  SELECT id, place,
    NOT is_cut AND instr(after, ' → ') = 0 AND CASE
      WHEN field IN ('trays', 'plants') THEN before = CAST(before AS INTEGER) || '' AND after = CAST(after AS INTEGER) || ''
      WHEN field = 'closedAt' THEN before IN (strftime('%Y-%m-%dT%H:%M:%SZ', before), strftime('%Y-%m-%dT%H:%M:%fZ', before))
        AND after IN (strftime('%Y-%m-%dT%H:%M:%SZ', after), strftime('%Y-%m-%dT%H:%M:%fZ', after))
      ELSE field IN ('code', 'scion', 'rootstock', 'method') END AS is_read,
    CASE WHEN field IN ('trays', 'plants')
      THEN json_object('field', field, 'before', CAST(before AS INTEGER), 'after', CAST(after AS INTEGER))
      ELSE json_object('field', field, 'before', iif(before = '(empty)', '', before), 'after', iif(after = '(empty)', '', after)) END AS said
  FROM value
), corrected AS (
  SELECT id, json_object('changes', json_group_array(json(said) ORDER BY place)) AS about
  FROM change GROUP BY id HAVING min(is_read) = 1
)
UPDATE log_entries SET note = '', about = corrected.about FROM corrected WHERE corrected.id = log_entries.id;
