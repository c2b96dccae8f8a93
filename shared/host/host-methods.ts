/** Names of the calls, without their schemas: all that the preload needs. A test holds them against the contract. */
export const HOST_METHODS = [
  'app.info',
  'settings.read',
  'settings.write',
  'trees.list',
  'trees.read',
  'trees.snapshot',
  'trees.draft',
  'packs.list',
  'packs.install',
  'packs.remove',
  'visits.list',
  'visits.create',
  'visits.read',
  'visits.append',
  'photos.write',
  'photos.read',
] as const;
