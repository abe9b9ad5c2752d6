// The target ids of channels that are no phone: they say which channel and whom.

export function emailTarget(personId: string): string {
  return `email:${personId}`;
}

/** `personId` null = the site. */
export function webhookTarget(webhookId: string, personId: string | null): string {
  return personId === null ? `webhook:${webhookId}` : `webhook:${webhookId}:${personId}`;
}

/** The id of the webhook that a target names. */
export function webhookIdOf(targetId: string): string {
  return targetId.split(':')[1] ?? '';
}
