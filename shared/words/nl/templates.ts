// What is wrong with the template of a webhook, in Dutch.
import type { templates as english } from '../en/templates.ts';

export const templates: typeof english = {
  noSuchField: (name) => `er is geen veld {{${name}}}`,
  loneBrace: 'een {{ of }} staat alleen',
  formNeedsTemplate: 'een formulier heeft er een nodig, zoals to={{person.phoneNumber}}&text={{title}}',
  templateNoJson: 'met ingevulde velden is dit geen JSON: zet elk {{veld}} tussen aanhalingstekens',
};
