// Which page an address means.
import { describe, expect, test } from 'vitest';
import { chamberPath, matchRoute, movedPath, profilePath } from '../../web/router.ts';

describe('an address leads to its page', () => {
  test.each([
    ['/', 'overview'],
    ['/alarms', 'alarms'],
    ['/alarms/', 'alarms'],
    ['/batches', 'batches'],
    ['/profiles', 'profiles'],
    ['/sensors', 'sensors'],
    ['/people', 'people'],
    ['/my-alerts', 'my-alerts'],
    ['/channels', 'channels'],
    ['/settings', 'settings'],
    ['/sign-in', 'sign-in'],
    ['/set-up', 'set-up'],
    ['/first-batch', 'first-batch'],
    ['/chambers/c1', 'chamber'],
    ['/profiles/pepper', 'profile'],
    ['/profiles/pepper/', 'profile'],
    ['/profiles/pepper/edit', 'profile-edit'],
    ['/profiles/pepper/copy', 'profile-copy'],
    ['/profiles/pepper/burn', 'nothing'],
    ['/chambers', 'nothing'],
    ['/chambers/c1/more', 'nothing'],
    ['/chambers/a b', 'nothing'],
    ['/Alarms', 'nothing'],
    ['/nope', 'nothing'],
  ] as const)('%s is the page "%s"', (path, page) => {
    expect(matchRoute(path, '').page).toBe(page);
  });
});

test('a chamber page knows its chamber and the alarm an alert pointed to', () => {
  expect(matchRoute('/chambers/V1St_GXR8~Z5', '?alarm=a.7')).toMatchObject({ id: 'V1St_GXR8~Z5', alarmId: 'a.7' });
});

test('the set-up page takes the code from the address', () => {
  expect(matchRoute('/set-up', '?code=3f9a-77').code).toBe('3f9a-77');
});

test('the path of a chamber leads back to it', () => {
  expect(matchRoute(chamberPath('c-12'), '')).toMatchObject({ page: 'chamber', id: 'c-12' });
});

test('the path of a profile leads back to it, and so does that of its editor', () => {
  expect(matchRoute(profilePath('pepper'), '')).toMatchObject({ page: 'profile', id: 'pepper' });
  expect(matchRoute(`${profilePath('pepper')}/edit`, '')).toMatchObject({ page: 'profile-edit', id: 'pepper' });
});

test.each([
  ['/people', '#webhooks', '/channels#webhooks'],
  ['/people', '#mine', '/my-alerts#mine'],
  ['/people', '#invite', null],
  ['/people', '', null],
  ['/alarms', '#mine', null],
])('an address from before the page of people was split: %s%s now is %s', (path, hash, now) => {
  expect(movedPath(path, hash)).toBe(now);
});
