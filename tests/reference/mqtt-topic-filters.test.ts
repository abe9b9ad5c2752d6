// Topic filters as MQTT 3.1.1 §4.7 explains them; its examples [from memory; high confidence].
import { describe, expect, test } from 'vitest';
import { findTopicFilterFault, topicMatches } from '../../shared/readings/topic-filter.ts';

describe('MQTT 3.1.1 §4.7', () => {
  test.each([
    { filter: 'sport/tennis/player1/#', topic: 'sport/tennis/player1', matches: true },
    { filter: 'sport/tennis/player1/#', topic: 'sport/tennis/player1/ranking', matches: true },
    { filter: 'sport/tennis/player1/#', topic: 'sport/tennis/player1/score/wimbledon', matches: true },
    { filter: 'sport/tennis/player1/#', topic: 'sport/tennis/player2', matches: false },
    { filter: 'sport/#', topic: 'sport', matches: true },
    { filter: '#', topic: 'sport/tennis', matches: true },
    { filter: 'sport/tennis/+', topic: 'sport/tennis/player1', matches: true },
    { filter: 'sport/tennis/+', topic: 'sport/tennis/player1/ranking', matches: false },
    { filter: 'sport/+', topic: 'sport', matches: false },
    { filter: 'sport/+', topic: 'sport/', matches: true },
    { filter: '+/+', topic: '/finance', matches: true },
    { filter: '/+', topic: '/finance', matches: true },
    { filter: '+', topic: '/finance', matches: false },
    { filter: '#', topic: '$SYS/uptime', matches: false },
    { filter: '+/monitor/Clients', topic: '$SYS/monitor/Clients', matches: false },
    { filter: '$SYS/#', topic: '$SYS/monitor/Clients', matches: true },
    { filter: '$SYS/monitor/+', topic: '$SYS/monitor/Clients', matches: true },
    { filter: 'ACCOUNTS', topic: 'Accounts', matches: false },
    { filter: 'finance', topic: '/finance', matches: false },
  ])('$filter and $topic: $matches', ({ filter, topic, matches }) => {
    expect(topicMatches(filter, topic)).toBe(matches);
  });

  test.each([
    { filter: '+', valid: true },
    { filter: '+/tennis/#', valid: true },
    { filter: 'sport/+/player1', valid: true },
    { filter: '/', valid: true },
    { filter: 'sport+', valid: false },
    { filter: 'sport/tennis#', valid: false },
    { filter: 'sport/tennis/#/ranking', valid: false },
    { filter: '', valid: false },
    { filter: 'a\0b', valid: false },
  ])('"$filter" is a filter: $valid', ({ filter, valid }) => {
    expect(findTopicFilterFault(filter) === null).toBe(valid);
  });

  test('a topic that holds a wildcard is no topic, so nothing takes it in', () => {
    expect(topicMatches('#', 'a/+/b')).toBe(false);
    expect(topicMatches('a/#', 'a/#')).toBe(false);
    expect(topicMatches('#', '')).toBe(false);
  });
});
