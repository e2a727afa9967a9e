/** Names of alarms that are gone, each with the alarm that looks for the same now, if one does. No name is used again: old records hold them. */
export const goneAlarms: Readonly<Record<string, string | undefined>> = {
  "fever-and-skin-in-the-herd": "fever-and-losses-in-the-herd",
  "fever-cluster-with-oedema-or-bleeding": undefined,
  "fever-cough-and-nervous-signs": "nervous-piglets-and-abortions",
  "fever-despite-treatment": undefined,
  "haemorrhages-in-many-organs": "fever-and-bleeding",
  "skin-haemorrhages": "fever-and-bleeding",
  "sudden-deaths-with-fever": "many-deaths-in-a-group",
};
