import { MODELS } from './electron/cli/load-models.ts';
import { tableProblem } from './shared/planning/model-problem.ts';
import { evaluatePolicy, rolloutPolicy, oneStepPolicy } from './shared/planning/policy.ts';
import { solveExactly } from './shared/planning/exact.ts';
import { advicePolicy } from './shared/planning/evaluation/model-ways.ts';
import { excessWhenDisturbed } from './shared/planning/evaluation/index.ts';
const N=Number(process.argv[2]??10);
for (const m of MODELS){ const p=tableProblem(m.model); const s=solveExactly(p); const a=advicePolicy(p,m.model); const t0=Date.now(); const r=rolloutPolicy(p,a); const e=evaluatePolicy(p,r); const ms=Date.now()-t0;
 const g=(x:number)=>(100*(x-s.cost)/Math.abs(s.cost)).toFixed(2);
 const x=[0.25,.5].map(z=>excessWhenDisturbed(m.model,r,z,N,31));
 const xo=[.5].map(z=>excessWhenDisturbed(m.model,s.policy,z,N,31));
 console.log(m.id, 'advice',g(evaluatePolicy(p,a).cost),'rollout-advice',g(e.cost),'rollout-1step',g(evaluatePolicy(p,rolloutPolicy(p,oneStepPolicy(p))).cost), 'flow', (m as any).expected?.policies?.authoredFlowchart?.cost, e.cost.toFixed(2),'ms',ms,'x',x.map(v=>v?.toFixed(3)),'xopt',xo.map(v=>v?.toFixed(3)));
}
