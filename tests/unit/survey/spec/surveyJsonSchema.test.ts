import { Ajv2020 } from 'ajv/dist/2020.js';
import { expect, it } from 'vitest';
import { surveyJsonSchema } from '../../../../src/survey/spec/surveyJsonSchema.ts';
import { surveyOf } from './surveyText.ts';

const schema = surveyJsonSchema();
const validate = new Ajv2020({ strict: true, strictTypes: false, allowUnionTypes: true }).compile(schema);
const isValid = (changes: Readonly<Record<string, unknown>> = {}) => validate(JSON.parse(surveyOf(changes)));
const listed = { field: 'load.inertia', from: '1 kg m^2', to: 2, count: 3 };

it('names its draft', () => {
  expect(schema).toMatchObject({ $schema: 'https://json-schema.org/draft/2020-12/schema' });
});

it('accepts surveys of every kind', () => {
  expect(isValid()).toBe(true);
  expect(isValid({ ask: 'sweep', runs: undefined, vary: [listed] })).toBe(true);
  expect(isValid({ ask: 'limit map', runs: undefined, vary: [listed, listed] })).toBe(true);
  expect(isValid({ ask: 'sensitivity', runs: undefined, samples: 8, metrics: ['startTime'] })).toBe(true);
  const vary = [{ field: 'supply.angle', from: '0 deg', to: '9 deg' }];
  expect(isValid({ ask: 'worst case', metric: 'startTime', seek: 'largest magnitude', vary })).toBe(true);
});

it('refuses what an editor can see to be wrong', () => {
  expect(isValid({ samples: 8 })).toBe(false);
  expect(isValid({ ask: 'rando' })).toBe(false);
  expect(isValid({ runs: 0 })).toBe(false);
  expect(isValid({ runs: 1e9 })).toBe(false);
  expect(isValid({ vary: [] })).toBe(false);
  expect(isValid({ vary: [{ field: 'load.inertia', values: ['five'] }] })).toBe(false);
  expect(isValid({ metrics: ['plugMinimumTorqe'] })).toBe(false);
});
