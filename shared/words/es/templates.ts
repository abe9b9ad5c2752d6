// What is wrong with the template of a webhook, in Spanish.
import type { templates as english } from '../en/templates.ts';

export const templates: typeof english = {
  noSuchField: (name) => `no hay ningún campo {{${name}}}`,
  loneBrace: 'hay un {{ o un }} suelto',
  formNeedsTemplate: 'un formulario necesita una, como to={{person.phoneNumber}}&text={{title}}',
  templateNoJson: 'con sus campos rellenos no es JSON: ponga cada {{campo}} entre comillas',
};
