// The components of the leaves, each loaded when it is first turned to.
import type { Component } from 'svelte';
import type { Leaf } from '../core/leaves.ts';

type Loaded = Promise<{ readonly default: Component }>;

const shareBook = () => import('../share/share-book.ts');

const loaders: Readonly<Record<Exclude<Leaf, 'schedule'>, () => Loaded>> = {
  proposals: () => import('../plan/ProposalsPage.svelte'),
  shelf: () => import('../plan/ShelfPage.svelte'),
  cuts: () => import('../plan/CutsPage.svelte'),
  shopping: () => import('../plan/ShoppingPage.svelte'),
  order: () => import('../plan/OrderPage.svelte'),
  bench: () => import('../work/BenchPage.svelte'),
  tests: () => import('../work/TestsPage.svelte'),
  'hand-on': async () => ({ default: (await shareBook()).HandOnPage }),
  compare: async () => ({ default: (await shareBook()).ComparePage })
};

export const loadLeaf = (leaf: Exclude<Leaf, 'schedule'>): Loaded => loaders[leaf]();
