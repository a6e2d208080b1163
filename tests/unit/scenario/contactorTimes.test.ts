import { expect, it } from 'vitest';
import { contactorTimes } from '../../../src/scenario/contactorTimes.ts';

it('without a statement the incoming coil waits for the break contact of the outgoing contactor', () => {
  expect(contactorTimes({ openingTime: 0.012 })).toEqual({
    closingTime: 0.02,
    openingTime: 0.012,
    changeoverDelay: 0.012,
    changeoverGivenAs: 'default',
  });
});

it('a dead time fixes the delay: dead time = delay + closing time − opening time', () => {
  const times = contactorTimes({ closingTime: 0.02, openingTime: 0.01, deadTime: 0.02 });
  expect(times.changeoverDelay).toBe(0.01);
  expect(times.changeoverGivenAs).toBe('deadTime');
});

it('a dead time alone needs no operating times: command and contact are one', () => {
  expect(contactorTimes({ deadTime: 0.05 })).toMatchObject({
    closingTime: 0,
    openingTime: 0,
    changeoverDelay: 0.05,
  });
});

it('ideal poles exchange the phases at once unless times are stated', () => {
  expect(contactorTimes({ poles: 'ideal' })).toEqual({
    closingTime: 0,
    openingTime: 0,
    changeoverDelay: 0,
    changeoverGivenAs: 'default',
  });
  expect(contactorTimes({ poles: 'ideal', closingTime: 0.03 }).closingTime).toBe(0.03);
});

it('a dead time shorter than the operating times allow comes out as a negative delay', () => {
  expect(contactorTimes({ closingTime: 0.03, openingTime: 0.01, deadTime: 0.015 }).changeoverDelay).toBe(
    -0.005,
  );
});
