// What is on screen against axe-core's rules (WCAG 2.2 A, AA).
import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { expect } from './story.ts';

export const clean = async (page: Page, where: string, part = 'body'): Promise<void> => {
  const { violations } = await new AxeBuilder({ page })
    .include(part)
    .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
    .analyze();
  expect(
    violations.map(({ id, nodes }) => `${where}: ${id}: ${nodes[0]?.html ?? ''}`),
    where
  ).toEqual([]);
};
