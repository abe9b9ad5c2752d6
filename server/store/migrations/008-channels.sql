-- Channels are a list of webhooks and more; the one webhook there was becomes its first, with the id that its notices name from now on.
UPDATE settings SET value = json_object(
  'email', NULL,
  'webhooks', CASE WHEN json_type(value, '$.webhook') = 'object'
    THEN json_array(json_patch('{"id":"first","name":"Webhook","allowLocal":false,"audience":"site","contentType":"json","template":"","headers":[]}',
      json_extract(value, '$.webhook')))
    ELSE json_array() END)
WHERE name = 'channels';
UPDATE notices SET target_id = 'webhook:first' WHERE channel = 'webhook' AND target_id = 'webhook';
