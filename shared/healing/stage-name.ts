// The stages of a healing in their order. Apart from the shape of a profile, so that the browser knows them without its checks.
export const stageNames = ['loading', 'closed', 'venting', 'hardening'] as const;
export type StageName = (typeof stageNames)[number];
