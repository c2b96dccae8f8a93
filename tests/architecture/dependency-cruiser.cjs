/** Who may import whom. A rule explains itself: read the comment before changing the import. */
const order = ['units', 'measuring', 'knowledge', 'inference', 'planning', 'visit', 'coach', 'handover', 'practice'];

/** Left never imports right: a folder of shared/ may use only itself and the folders before it. */
const layers = order.map((folder, i) => ({
  name: `shared-${folder}-looks-left`,
  severity: 'error',
  comment: `shared/${folder} may use ${order.slice(0, i).join(', ') || 'no other folder'} of shared/. Move what it needs to the left, or pass the value in.`,
  from: { path: `^shared/${folder}/` },
  to: { path: `^shared/(${[...order.slice(i + 1), 'host'].join('|')})/` },
}));

module.exports = {
  forbidden: [
    ...layers,
    {
      name: 'shared-stands-alone',
      severity: 'error',
      comment:
        'shared runs on the machine side, in the window and in tests. Move file or screen access to electron/host or renderer, and pass the value in.',
      from: { path: '^shared/' },
      to: { pathNot: '^(shared/|node_modules/(xstate|yaml|valibot|marked|ts-fsrs)/)' },
    },
    {
      name: 'host-contract-only',
      severity: 'error',
      comment:
        'shared/host is the contract between window and machine side; it may use types of shared, never electron or renderer.',
      from: { path: '^shared/host/' },
      to: { path: '^(electron|renderer|tests)/' },
    },
    {
      name: 'machine-side-knows-shared',
      severity: 'error',
      comment: 'electron/ reaches only shared/ and Node; the window is reached through the contract in shared/host.',
      from: { path: '^electron/' },
      to: { path: '^(renderer|tests)/' },
    },
    {
      name: 'only-main-and-preload-know-electron',
      severity: 'error',
      comment: "Only electron/main and electron/preload may import 'electron': host and server also run without it.",
      from: { path: '^(electron/(host|server|cli|start)|shared|renderer)/' },
      to: { path: '^node_modules/electron/' },
    },
    {
      name: 'window-knows-shared',
      severity: 'error',
      comment: 'renderer/ reaches the machine side through shared/host alone.',
      from: { path: '^renderer/' },
      to: { path: '^(electron|tests)/' },
    },
    {
      name: 'parts-take-props',
      severity: 'error',
      comment: 'renderer/parts and renderer/plots take props and give callbacks; state is wired in screens and app.',
      from: { path: '^renderer/(parts|plots)/' },
      to: { path: '^renderer/(state|screens|app)/', dependencyTypesNot: ['type-only'] },
    },
    {
      name: 'nothing-imports-tests',
      severity: 'error',
      comment: 'tests/ may import anything; nothing may import tests/.',
      from: { pathNot: '^tests/' },
      to: { path: '^tests/' },
    },
    {
      name: 'no-circles',
      severity: 'error',
      comment: 'Two modules that need each other are one module, or the shared part belongs in a third.',
      from: {},
      to: { circular: true, dependencyTypesNot: ['type-only'] },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '^(build|node_modules)/' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tests/tsconfig.json' },
    enhancedResolveOptions: {
      extensions: ['.ts', '.js', '.mjs', '.svelte'],
      conditionNames: ['import', 'types', 'node', 'svelte'],
    },
  },
};
