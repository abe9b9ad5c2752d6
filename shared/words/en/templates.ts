// What is wrong with the template of a webhook, in English.
export const templates = {
  noSuchField: (name: string) => `there is no field {{${name}}}`,
  loneBrace: 'a {{ or }} stands alone',
  formNeedsTemplate: 'a form needs one, such as to={{person.phoneNumber}}&text={{title}}',
  templateNoJson: 'with its fields filled in it is no JSON: put each {{field}} inside quotes',
};
