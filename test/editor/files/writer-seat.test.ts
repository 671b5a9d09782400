// One window writes a chassis and the others follow; the seat goes over by a click, when the writer is closed, and
// when it does not answer.
import { WriterSeat, type SeatEvents, type SeatHost } from '#editor/files/writer-seat.ts';
import { describe, expect, it } from 'vitest';
import { BrowserWindows } from './browser-windows.ts';

const settle = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 5));
const windowOn = (host: SeatHost, putAway: () => Promise<void> = async () => undefined) => {
  const heard: string[] = [];
  const events: SeatEvents = {
    onFollow: () => heard.push('follow'),
    onSeat: () => heard.push('seat'),
    onSaved: () => heard.push('saved'),
    onAsked: async () => {
      await putAway();
      heard.push('asked');
    }
  };
  return { seat: new WriterSeat(host, events), heard };
};

describe('a seat', () => {
  it('is had by the first window, and the second follows and hears what is saved', async () => {
    const windows = new BrowserWindows();
    const [first, second] = [windowOn(windows.open('1')), windowOn(windows.open('2'))];
    expect(await first.seat.take('da')).toBe(true);
    expect(await second.seat.take('da')).toBe(false);
    first.seat.tellSaved();
    second.seat.tellSaved();
    await settle();
    expect([first.heard, second.heard]).toEqual([[], ['follow', 'saved']]);
  });

  it('of another chassis is free, and what is saved of one is not heard of by the other', async () => {
    const windows = new BrowserWindows();
    const [first, second] = [windowOn(windows.open('1')), windowOn(windows.open('2'))];
    expect(await first.seat.take('da')).toBe(true);
    expect(await second.seat.take('db')).toBe(true);
    first.seat.tellSaved();
    await settle();
    expect(second.heard).toEqual([]);
  });

  it('comes to the window that follows when the writer is closed', async () => {
    const windows = new BrowserWindows();
    const [first, second] = [windowOn(windows.open('1')), windowOn(windows.open('2'))];
    await first.seat.take('da');
    await second.seat.take('da');
    first.seat.leave();
    await settle();
    expect(second.heard).toEqual(['follow', 'seat']);
  });

  it('is taken over once the writer has put its last edit away, ahead of those who wait', async () => {
    const windows = new BrowserWindows();
    const order: string[] = [];
    const first = windowOn(windows.open('1'), async () => {
      await Promise.resolve();
      order.push('put away');
    });
    const second = windowOn(windows.open('2'));
    const third = windowOn(windows.open('3'));
    for (const { seat } of [first, second, third]) await seat.take('da');
    await third.seat.takeOver();
    order.push('taken over');
    await settle();
    expect(order).toEqual(['put away', 'taken over']);
    expect(third.heard).toEqual(['follow', 'seat']);
    expect(first.heard).toEqual(['asked', 'follow']);
    expect(second.heard).toEqual(['follow']);
    // And back again.
    await first.seat.takeOver();
    await settle();
    expect(first.heard).toEqual(['asked', 'follow', 'seat']);
    expect(third.heard.at(-1)).toBe('follow');
  });

  it('is taken from a window that does not answer', async () => {
    const windows = new BrowserWindows();
    const [first, second] = [windowOn(windows.open('1', true)), windowOn(windows.open('2'))];
    await first.seat.take('da');
    await second.seat.take('da');
    await second.seat.takeOver();
    expect(second.heard).toEqual(['follow', 'seat']);
    await settle();
    expect(first.heard).toEqual(['follow']);
  });

  it('keeps hands off what is open in another window', async () => {
    const windows = new BrowserWindows();
    const [first, second] = [windowOn(windows.open('1')), windowOn(windows.open('2'))];
    await first.seat.take('da');
    let count = 0;
    const work = async (): Promise<void> => {
      count += 1;
    };
    expect(await second.seat.whileFree('da', work)).toBe(false);
    expect(await first.seat.whileFree('da', work)).toBe(true);
    expect(await second.seat.whileFree('db', work)).toBe(true);
    expect(count).toBe(2);
  });
});
