-- What builds and running gear keep since they were first stored, as the schemas fill it in for a new record. Revisions stay as they were written.
UPDATE records SET body = json_insert(body,
  '$.ledger', json('[]'), '$.stacks', json('[]'), '$.places', json('{}'),
  '$.exchanges', json('{"motors":[],"rotors":[],"packs":[],"skirts":[]}'),
  '$.gear', json('null'), '$.vehicle.verticalStiffness', json('null'), '$.vehicle.gapLoad', json('null'))
WHERE collection = 'builds';

UPDATE records SET body = json_insert(body, '$.estimated', json('[]'), '$.uncertainty', json('{}'))
WHERE collection = 'gears';
